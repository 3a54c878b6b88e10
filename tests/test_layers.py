"""The direction of imports: the contracts in pyproject.toml are kept, and each is shown to bite."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
LINT = Path(sys.executable).with_name("lint-imports")

BREACHES = {
    "Imports go downward only": ("record/units.py", "undertrim.check.runner"),
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
}
"""The start of each contract's name, with a module and an import there that would break it."""


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


def broken(output: str) -> list[str]:
    """The names of the contracts that are reported broken."""
    return [line.partition(" BROKEN")[0] for line in output.splitlines() if " BROKEN" in line]


def test_all_contracts_are_kept() -> None:
    done = lint(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr
    assert f"Contracts: {len(BREACHES)} kept, 0 broken." in done.stdout


@pytest.mark.parametrize("contract", BREACHES)
def test_each_contract_can_be_broken(copy: Path, contract: str) -> None:
    name, target = BREACHES[contract]
    module = copy / "generator" / "undertrim" / name
    module.write_text(f"{module.read_text(encoding='utf-8')}\nimport {target}\n", encoding="utf-8")
    done = lint(copy)
    assert done.returncode == 1, done.stdout + done.stderr
    assert any(found.startswith(contract) for found in broken(done.stdout)), done.stdout


def test_a_module_without_a_floor_is_refused(copy: Path) -> None:
    stray = copy / "generator" / "undertrim" / "stray.py"
    stray.write_text('"""A module that no layer names."""\n', encoding="utf-8")
    done = lint(copy)
    assert done.returncode == 1, done.stdout + done.stderr
    assert "undertrim.stray" in done.stdout
