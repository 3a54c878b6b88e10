"""Tools by the fastener they turn, and by their name."""

from functools import lru_cache

from undertrim.record import drives
from undertrim.record.model import Fastener
from undertrim.resources import table
from undertrim.words import Value, Word, one_of, word


def tool_for(fastener: Fastener, *, back: bool = False) -> Value:
    """The tool that undoes a fastener, or puts it `back`; both where either of two will do, empty for bare hands."""
    return _of_sort(fastener.kind, fastener.what, fastener.or_drive, back)[1]


def tools_for(fastener: Fastener, *, back: bool = False) -> tuple[Value, ...]:
    """The tools of which any one undoes a fastener, or puts it `back`."""
    return _of_sort(fastener.kind, fastener.what, fastener.or_drive, back)[0]


@lru_cache(maxsize=4096)  # each line of each step is asked ten times
def _of_sort(kind: str, what: str, or_drive: str, back: bool) -> tuple[tuple[Value, ...], Value]:
    """The tools for all fasteners of a sort, and as they are said together."""
    row = table("fasteners")[kind]
    if row.get("turned"):
        found = tuple(tool for one in (what, or_drive) if one and (tool := tool_turning(one)))
    else:
        name = (row.get("tool_back") if back else None) or row.get("tool")
        found = (tool_called(name),) if name else ()
    return found, one_of(*found) if len(found) > 1 else next(iter(found), "")


def tool_called(name: str) -> Word:
    """A tool of data/tools.toml."""
    return word("tools", name, "label")


@lru_cache(maxsize=4096)
def tool_turning(what: str) -> Value:
    """The tool that turns a drive as typed, such as `hex 10 mm`."""
    return drives.tool(drives.parse(what))
