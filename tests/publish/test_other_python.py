"""The same bytes from another Python: a whole site with its sheets, built by the one that runs the tests and by another version, far from each other."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from undertrim.cli import main

ROOT = Path(__file__).parents[2]
NAME = "UNDERTRIM_OTHER_PYTHON"
OTHER = os.environ.get(NAME, "")
VERSION = "import sys; print('.'.join(map(str, sys.version_info[:2])))"


def asked(python: str, *words: str, **surroundings: str) -> str:
    env = {**os.environ, "PYTHONPATH": str(ROOT / "generator"), "SOURCE_DATE_EPOCH": "1764000000", **surroundings}
    done = subprocess.run([python, *words], env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout.strip()


def held(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.skipif(
    not OTHER, reason=f"{NAME} names no Python of another version that has the packages of constraints.txt"
)
def test_another_python_builds_the_same_bytes(tmp_path: Path) -> None:
    assert asked(OTHER, "-c", VERSION) != asked(sys.executable, "-c", VERSION), (
        f"{NAME} is the Python that runs the tests"
    )
    built = []
    for python, place, zone, seed in ((sys.executable, "one", "UTC", "1"), (OTHER, "there/two", "Asia/Tokyo", "2")):
        folder = tmp_path / place
        assert main(["init", str(folder), "--name", "Bay Four", "--address", "https://bay.example/"]) == 0
        asked(python, "-m", "undertrim.cli", "build", "--in", str(folder), TZ=zone, PYTHONHASHSEED=seed)
        built.append(held(folder / "site"))
    one, other = built
    assert one.keys() == other.keys()
    assert {name for name, content in one.items() if other[name] != content} == set()
    assert any(name.endswith(".pdf") for name in one)
