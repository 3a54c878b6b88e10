"""The direction of imports: the contracts in pyproject.toml are kept, and each is shown to bite."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
LINT = Path(sys.executable).with_name("lint-imports")

BREACHES = {
    "Imports go downward only": ("publish/web/policy.py", "undertrim.commands.ending"),
    "The package itself loads nothing": ("__init__.py", "undertrim.cli"),
    "Nothing imports in a circle": ("record/problem.py", "undertrim.record.source"),
    "Rules do not import rules": ("check/rules/year_range.py", "undertrim.check.rules.order_cycle"),
    "A kind knows no other kind (record)": (
        "record/model/kinds/speaker/gear.py",
        "undertrim.record.model.kinds.receiver.gear",
    ),
    "A kind knows no other kind (derive)": ("derive/kinds/speaker.py", "undertrim.derive.kinds.receiver"),
    "A kind knows no other kind (fit)": ("derive/fit/kinds/speaker/fit.py", "undertrim.derive.fit.kinds.receiver.fit"),
    "A kind knows no other kind (page)": (
        "publish/facts/kinds/speaker/drawn.py",
        "undertrim.publish.facts.kinds.receiver.drawn",
    ),
    "A kind knows no other kind (template)": (
        "publish/printed/paper/kinds/speaker.py",
        "undertrim.publish.printed.paper.kinds.receiver",
    ),
    "What people get is built of facts": ("publish/printed/pdf.py", "undertrim.publish.web.policy"),
    "Only the register knows the rules": ("check/runner.py", "undertrim.check.rules.year_range"),
    "The replay knows nothing": ("derive/simulation/world.py", "undertrim.derive.procedure.order"),
    "Only one module knows the site engine": ("publish/web/pages.py", "mkdocs.config"),
    "Only one module knows the PDF engine": ("publish/web/pages.py", "typst"),
    "Only one module knows what asks on the terminal": ("publish/web/pages.py", "questionary"),
    "Only one module knows workbooks": ("publish/web/pages.py", "openpyxl"),
    "Only one module knows Dask": ("publish/web/pages.py", "distributed"),
}
"""The start of each contract's name, with a module and an import there that would break it.

All are made in one copy, so none may make a way round through the whole package: the report would have every pair on it.
"""

SHOWN = {
    "undertrim.__init__ -> undertrim.cli": "undertrim -> undertrim.cli",
    "undertrim.record.problem -> undertrim.record.source": ".problem -> .source",
    "undertrim.publish.web.pages -> mkdocs.config": "undertrim.publish.web.pages -> mkdocs",
}
"""How a report shows an import, where it does not name both modules in full."""


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the package and its contracts, free to be broken."""
    shutil.copytree(ROOT / "generator", tmp_path / "generator", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path


def lint(root: Path) -> subprocess.CompletedProcess[str]:
    """Run import-linter on the package below `root`."""
    env = os.environ | {"PYTHONPATH": str(root / "generator"), "COLUMNS": "200"}
    command = [str(LINT), "--no-logo", "--no-cache"]
    return subprocess.run(command, cwd=root, env=env, capture_output=True, text=True, check=False)


def broken(output: str) -> dict[str, str]:
    """What is told of each contract that is broken, by its name; before it stands a rule as long as the name."""
    _, _, told = output.partition("Broken contracts")
    parts = re.split(r"^(.+)\n-+\n\n", told, flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def shown(module: str, target: str) -> str:
    """An import as a report shows it; then follows its line, or how many there are."""
    made = f"undertrim.{module.removesuffix('.py').replace('/', '.')} -> {target}"
    return f"- {SHOWN.get(made, made)} ("


def test_all_contracts_are_kept() -> None:
    done = lint(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr
    assert f"Contracts: {len(BREACHES)} kept, 0 broken." in done.stdout


def test_each_contract_can_be_broken(copy: Path) -> None:
    """All at once, since each report takes as long: each contract must name the very import that was made to break it."""
    for name, target in BREACHES.values():
        module = copy / "generator" / "undertrim" / name
        module.write_text(f"{module.read_text(encoding='utf-8')}\nimport {target}\n", encoding="utf-8")
    done = lint(copy)
    assert done.returncode == 1, done.stdout + done.stderr
    told = broken(done.stdout)
    assert len(told) == len(BREACHES), list(told)
    for contract, breach in BREACHES.items():
        (said,) = (said for name, said in told.items() if name.startswith(contract))
        assert shown(*breach) in re.sub(r"^- +", "- ", said, flags=re.MULTILINE), f"{contract}: {said}"


def test_a_module_without_a_floor_is_refused(copy: Path) -> None:
    stray = copy / "generator" / "undertrim" / "stray.py"
    stray.write_text('"""A module that no layer names."""\n', encoding="utf-8")
    done = lint(copy)
    assert done.returncode == 1, done.stdout + done.stderr
    assert "undertrim.stray" in done.stdout
