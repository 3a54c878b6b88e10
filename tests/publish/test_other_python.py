"""The same bytes from another Python: a whole site with its sheets, built by the one that runs the tests and by another version, far from each other."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from small_site import held, quick, rendered, silent, workspace

from undertrim import resources
from undertrim.cli import main
from undertrim.publish.build.building import build
from undertrim.publish.web import site

ROOT = Path(__file__).parents[2]
NAME = "UNDERTRIM_OTHER_PYTHON"
OTHER = os.environ.get(NAME, "")
VERSION = "import sys; print('.'.join(map(str, sys.version_info[:2])))"


def asked(python: str, *words: str, **surroundings: str) -> str:
    env = {**os.environ, "PYTHONPATH": str(ROOT / "generator"), "SOURCE_DATE_EPOCH": "1764000000", **surroundings}
    done = subprocess.run([python, *words], env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout.strip()


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


def test_what_devices_are_told_of_a_file_follows_from_the_file(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever else the program is, what it made is the same: a device need not fetch it again."""
    monkeypatch.setattr(site, "render", rendered)
    monkeypatch.setattr(site, "own", lambda _: ("https://undertrim.example/", "Undertrim"))
    made = []
    for program in ("one", "another"):
        monkeypatch.setattr(resources, "program", lambda program=program: program)
        with quick() as folder:
            build(workspace(folder, 2), folder / "site", sheets=False, progress=silent)
            made.append(held(folder / "site"))
    one, other = made
    assert {name for name, content in one.items() if other[name] != content} == set()
    assert any(name.startswith("keeper/") for name in one)
