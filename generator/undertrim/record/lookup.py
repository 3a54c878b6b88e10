"""Finds a vehicle record by its id or address without reading the whole collection."""

from pathlib import Path

from undertrim.record.nearness import suggestion
from undertrim.record.store import Workspace, address
from undertrim.words import SaidError, message, one_of


class NotFound(SaidError, LookupError):  # noqa: N818 - it names what happened
    """No record, or more than one, goes by that name."""


def vehicle_file(workspace: Workspace, name: str) -> Path:
    """The file of the vehicle `name`: its id (the file's stem), `make/id`, or a path. Raises NotFound."""
    path = Path(name)
    if path.suffix in (".yaml", ".yml"):
        if path.is_file():
            return path
        raise NotFound(message("files/does-not-exist", name=name))
    make, _, stem = name.rpartition("/")
    every = workspace.every("vehicles")
    found = [path for path in every if path.stem == stem and make in ("", path.parent.name)]
    if len(found) == 1:
        return found[0]
    if found:
        addresses = one_of(*map(address, found))
        raise NotFound(message("files/several-makes", name=stem, addresses=addresses))
    hint = suggestion(stem, sorted({path.stem for path in every}), message("nearness/vehicles"))
    raise NotFound(message("files/no-vehicle", name=name, hint=hint))


def gear_file(workspace: Workspace, name: str) -> Path:
    """The file of the gear whose record has this id (the file's stem). Raises NotFound."""
    every = workspace.every("gear")
    found = [path for path in every if path.stem == name]
    if found:
        return found[0]
    hint = suggestion(name, sorted(path.stem for path in every), message("nearness/ids"))
    raise NotFound(message("files/no-gear", name=name, hint=hint))


def file_of(workspace: Workspace, vehicle: str, gear: str) -> Path:
    """The file of a vehicle or of gear, whichever is named. Raises NotFound."""
    return gear_file(workspace, gear) if gear else vehicle_file(workspace, vehicle)
