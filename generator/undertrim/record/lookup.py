"""Finds a vehicle record by its id or address without reading the whole collection."""

from pathlib import Path

from undertrim.record.complaints import nearest
from undertrim.record.store import Workspace


class NotFound(LookupError):  # noqa: N818 - it names what was found
    """No record, or more than one, goes by that name; the text says which there are."""


def vehicle_file(workspace: Workspace, name: str) -> Path:
    """The file of the vehicle `name`: its id (the file's stem), `make/id`, or a path. Raises NotFound."""
    path = Path(name)
    if path.suffix in (".yaml", ".yml"):
        if path.is_file():
            return path
        raise NotFound(f"'{name}' does not exist")
    make, _, stem = name.rpartition("/")
    folder = workspace.records / "vehicles"
    every = [path for path in workspace.files([folder]) if folder.exists()]
    found = [path for path in every if path.stem == stem and make in ("", path.parent.name)]
    if len(found) == 1:
        return found[0]
    if found:
        raise NotFound(f"several makes have '{stem}': say {' or '.join(f'{p.parent.name}/{p.stem}' for p in found)}")
    raise NotFound(f"no vehicle '{name}'; {nearest(stem, sorted({path.stem for path in every}), 'vehicles')}")
