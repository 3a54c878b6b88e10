"""Tools by the fastener they turn, and by their name."""

from functools import lru_cache

from undertrim.record import drives
from undertrim.record.model import Fastener
from undertrim.resources import table
from undertrim.words import Value, Word, one_of, word


def tool_for(fastener: Fastener, *, back: bool = False) -> Value:
    """The tool that undoes a fastener, or puts it `back`; both where either of two will do, empty for bare hands."""
    found = tools_for(fastener, back=back)
    return one_of(*found) if len(found) > 1 else next(iter(found), "")


def tools_for(fastener: Fastener, *, back: bool = False) -> tuple[Value, ...]:
    """The tools of which any one undoes a fastener, or puts it `back`."""
    if fastener.turned:
        return tuple(tool for what in (fastener.what, fastener.or_drive) if what and (tool := tool_turning(what)))
    row = table("fasteners")[fastener.kind]
    name = (row.get("tool_back") if back else None) or row.get("tool")
    return (tool_called(name),) if name else ()


def tool_called(name: str) -> Word:
    """A tool of data/tools.toml."""
    return word("tools", name, "label")


@lru_cache(maxsize=4096)
def tool_turning(what: str) -> Value:
    """The tool that turns a drive as typed, such as `hex 10 mm`."""
    return drives.tool(drives.parse(what))
