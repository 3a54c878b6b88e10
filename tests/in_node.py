"""Runs the modules of the pages in Node. Without one the tests are skipped, or fail where UNDERTRIM_NODE=required."""

import json
import os
import shutil
import subprocess
import tempfile
from collections.abc import Callable
from typing import Any

import pytest

from undertrim.publish import script_words
from undertrim.publish.web import scripts

Run = Callable[..., Any]
_WHOLE = """
import {{ readFileSync }} from "node:fs";
{imports}
learn({words});
const asked = JSON.parse(readFileSync(0, "utf8"));
const answer = await ({program})(asked);
process.stdout.write(JSON.stringify(answer));
"""


@pytest.fixture(scope="session")
def node() -> str:
    """Where Node is."""
    found = shutil.which("node")
    if not found:
        if os.environ.get("UNDERTRIM_NODE") == "required":
            pytest.fail("no Node on this machine, and UNDERTRIM_NODE=required")
        pytest.skip("no Node on this machine: install it (on Debian the package nodejs)")
    return found


@pytest.fixture(scope="session")
def run(node: str) -> Run:
    """Gives some data to a function in JavaScript, in which the named modules are known by their names, with _ for -, and gives its answer back."""

    def answer(program: str, data: Any, *modules: str) -> Any:
        imports = f'import {{ learn }} from "{(scripts.folder() / "words.js").as_uri()}";\n' + "\n".join(f'import * as {name.replace("-", "_")} from "{(scripts.folder() / f"{name}.js").as_uri()}";' for name in modules)  # fmt: skip
        return json.loads(
            called(
                node, _WHOLE.format(imports=imports, words=script_words.everything(), program=program), json.dumps(data)
            )
        )

    return answer


def speaking() -> str:
    """The beginning of a program in which a function of a script is tried that says something."""
    place = (scripts.folder() / "words.js").as_uri()
    return f'import {{ learn, list, say }} from "{place}";\nlearn({script_words.everything()});\n'


def called(node: str, program: str, given: str = "") -> str:
    """What a program prints; what it says of an error fails the test."""
    with tempfile.NamedTemporaryFile(
        "w", suffix=".mjs", encoding="utf-8"
    ) as file:  # with all words it is too long for an argument
        file.write(program)
        file.flush()
        done = subprocess.run([node, file.name], input=given, capture_output=True, text=True, timeout=120)
    assert done.returncode == 0, done.stderr[-2000:]
    return done.stdout
