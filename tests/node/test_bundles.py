"""What the bundler makes is what Node makes of the same modules."""

import pytest

from in_node import Run, called
from undertrim.publish.web import scripts

PURE = [name for name in scripts.modules() if name.partition("-")[0] in ("fit", "electrical", "meter", "lengths") and name not in ("fit-form", "meter-guide")]  # fmt: skip
"""Modules that need no page."""


@pytest.mark.parametrize("name", PURE)
def test_a_module_in_a_function_exports_what_the_module_does(run: Run, name: str) -> None:
    found = run(f"() => Object.keys({name.replace('-', '_')}).sort()", None, name)
    assert found == sorted(scripts.read(scripts.folder() / f"{name}.js").exports)


@pytest.mark.parametrize("entry", scripts.ENTRIES)
def test_a_bundle_is_a_classic_script(node: str, entry: str) -> None:
    """It is parsed as such, where `import` and `export` are no words at all."""
    program = 'import {{ Script }} from "node:vm"; import {{ readFileSync }} from "node:fs"; new Script(readFileSync(0, "utf8"));'
    called(node, program.format(), scripts.bundle(entry))
