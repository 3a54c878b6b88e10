"""The packages that this program runs with, as they are installed here: itself, what it asks for, what these ask for, and so on."""

import re
from collections.abc import Iterator
from importlib import metadata

PROGRAM = "undertrim"
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*")


def installed(name: str = PROGRAM) -> list[metadata.Distribution]:
    """The distributions by name, the program first. What is only asked for by an extra, or on other machines and not here, is left out."""
    found: dict[str, metadata.Distribution] = {}
    waiting = [name]
    while waiting:
        key = _key(waiting.pop())
        if key in found:
            continue
        try:
            found[key] = metadata.distribution(key)
        except metadata.PackageNotFoundError:  # wanted on other machines
            continue
        waiting += _asked_for(found[key])
    first = found.pop(_key(name), None)
    return [*([first] if first else []), *(found[key] for key in sorted(found))]


def pinned() -> Iterator[str]:
    """A line of a requirements file for each of them."""
    for one in installed():
        yield f"{one.metadata['Name']}=={one.version}"


def _asked_for(one: metadata.Distribution) -> Iterator[str]:
    for line in one.requires or ():
        found = _NAME.match(line)
        if found and "extra ==" not in line.partition(";")[2].replace("extra==", "extra =="):
            yield found[0]


def _key(name: str) -> str:
    """The name as package indexes compare it (PyPA, "Name normalization")."""
    return re.sub(r"[-_.]+", "-", name).lower()
