"""The shipped records are read once in each process of the tests.

A tenth of what the tests did was to read the same seventy files again and again. No test writes to them, and nothing changes a record once it is
read: that is looked at in the end. What tests lay down themselves is read each time, as are the shipped ones by other processes.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest

from undertrim.record.store import Entry, Workspace

ROOT = Path(__file__).parents[1]
_read = Workspace.load
_kept: dict[tuple[Path, Path, int], tuple[Entry, str]] = {}


def load(place: Workspace, path: Path) -> Entry:
    """What `Workspace.load` gives; problems print another path in another working directory."""
    if place.root != ROOT or not path.is_relative_to(ROOT / "records") or not path.is_file():
        return _read(place, path)
    key = path, place.shown(path), path.stat().st_mtime_ns
    if key not in _kept:
        found = _read(place, path)
        _kept[key] = found, repr(found.source.data)
    return _kept[key][0]


def pytest_configure() -> None:
    pytest.MonkeyPatch().setattr(Workspace, "load", load)


@pytest.fixture(scope="session", autouse=True)
def _unchanged() -> Iterator[None]:
    yield
    changed = [str(found.path) for found, was in _kept.values() if repr(found.source.data) != was]
    assert changed == [], "a test changed what was read of a record, where it should have taken a copy"
