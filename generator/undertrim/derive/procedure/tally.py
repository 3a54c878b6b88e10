"""What follows from the steps: tools, fasteners out and back, things to buy, time."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from undertrim.derive.fastener_words import one as one_of_sort
from undertrim.derive.fastener_words import sort
from undertrim.derive.procedure import states
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.derive.procedure.tools import tools_for
from undertrim.record import drives
from undertrim.record.model import Blank, Fastener, Part, Prep
from undertrim.record.units import Quantity, show
from undertrim.resources import table
from undertrim.words import Items, Value, message, word

FATES = ("out", "back", "moved", "bagged", "binned", "new")


@dataclass(frozen=True, slots=True)
class Tool:
    """A tool with other tools that will do in its place; `either` are the two of a tool such as 'T20 bit or socket 7 mm'."""

    name: Value
    instead: tuple[Value, ...] = ()
    either: tuple[Value, ...] = ()


@dataclass(frozen=True, slots=True)
class Count:
    """Fasteners of one sort over the whole procedure. What comes out goes back, moves over, is bagged with its part or thrown away (`binned`); `new` ones go in.

    `unrecorded` counts the lines whose number nobody has recorded.
    """

    kind: str
    what: Value
    detail: Value
    out: int = 0
    back: int = 0
    moved: int = 0
    bagged: int = 0
    binned: int = 0
    new: int = 0
    unrecorded: int = 0


@dataclass(frozen=True, slots=True)
class Purchase:
    """Something single-use: how many, of what, for which part; `place` is where that stands in the record."""

    count: int | None
    what: Value
    part: Value
    place: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Time:
    """Minutes with a recorded time, how many steps have none, and waits: their seconds, or None where unknown."""

    minutes: float
    untimed: int
    waits: tuple[float | None, ...]


def tools(steps: Iterable[Step]) -> tuple[Tool, ...]:
    """Every tool in the order of first use, with near-equals across inch and metric.

    Where either of two tools will do, they are left out if one of them is needed anyway.
    """
    found: dict[Value, Tool] = {}
    for step in steps:
        for line in step.fasteners:
            if line.tool and line.fate != "leave":
                found.setdefault(line.tool, Tool(line.tool, _instead(line.fastener), either(line)))
        for name in step.tools:
            found.setdefault(name, Tool(name))
    return tuple(tool for tool in found.values() if not any(name in found for name in tool.either))


def either(line: FastenerLine) -> tuple[Value, ...]:
    """The two tools of which either will do for a line; empty where there is one."""
    return tools_for(line.fastener) if line.fastener.or_drive else ()


def _instead(fastener: Fastener) -> tuple[Value, ...]:
    drive = None if fastener.or_drive else fastener.drive
    return (
        tuple(drives.tool(near.drive) for near in drives.near_equals(drive) if near.verdict != "marginal")
        if drive
        else ()
    )


def fasteners(steps: Iterable[Step]) -> tuple[Count, ...]:
    """Counts by sort, in the order of first use. Hooks and bonds come with their part and are not counted."""
    return _summed((step, line) for step in steps for line in step.fasteners)


def of_line(step: Step, line: FastenerLine) -> tuple[Count, ...]:
    """What one line of a step adds to the counts."""
    return _summed([(step, line)])


def _summed(lines: Iterable[tuple[Step, FastenerLine]]) -> tuple[Count, ...]:
    sums: dict[tuple[str, Value, Value], dict[str, int]] = {}
    for step, line in lines:
        key = _sort(line.fastener)
        if line.fate != "leave" and not step.again and table("fasteners")[key[0]]["counted"]:
            fields = sums.setdefault(key, dict.fromkeys((*FATES, "unrecorded"), 0))
            for fate, number in _fates(step, line).items():
                fields[fate] += number
    return tuple(Count(kind, what, detail, **fields) for (kind, what, detail), fields in sums.items())


def _sort(fastener: Fastener) -> tuple[str, Value, Value]:
    """Kind and sort of a fastener, and by what else the right one is found: sizes, colour, number; empty where none is recorded."""
    length = _shown(fastener.length) if isinstance(fastener.length, Quantity) else ""
    thick = _thick(fastener.diameter) if isinstance(fastener.diameter, Quantity) else ""
    number = message("fasteners/part-number", number=fastener.part_number) if fastener.part_number else ""
    sizes = tuple(part for part in (fastener.thread, thick, length, fastener.colour, number) if part)
    return fastener.kind, sort(fastener), Items(sizes, "comma") if sizes else ""


def _thick(diameter: Quantity) -> Value:
    return message("fasteners/thick", diameter=_shown(diameter))


_shown = lru_cache(maxsize=4096)(show)


def _fates(step: Step, line: FastenerLine) -> Mapping[str, int]:
    """What becomes of the fasteners of one line: where they leave a part for good, that is said where they come out.

    A part that new gear replaces goes back all the same in a visit without that gear: its refit takes back what was said.
    """
    count = line.count
    if not isinstance(count, int):
        return {"unrecorded": 1} if line.fate == "out" else {}
    part = step.node.thing if step.node else None
    gone = isinstance(part, Part) and part.replaced == "yes"
    left = _left(line.fastener, gone=gone)
    if line.fate == "out":
        return {"out": count, **({left: count} if left else {})}
    if gone and line.fate == "back" and left:
        return {line.fate: count, left: -count}
    return {line.fate: count}


def _left(fastener: Fastener, *, gone: bool) -> str:
    """Where fasteners end that do not go back: `gone` says that their part does not either."""
    if fastener.single_use:
        return "binned"
    if not gone:
        return ""
    return "moved" if fastener.moves == "yes" else "bagged"


def purchases(steps: Sequence[Step]) -> tuple[Purchase, ...]:
    """Single-use fasteners and sealing material that must be new, by part."""
    found: dict[tuple[Value, Value], Purchase] = {}
    for step in steps:
        for item in (*(new for line in step.fasteners for new in replacement(step, line)), *materials(step)):
            before = found.get((item.what, item.part))
            found[item.what, item.part] = _both(before, item) if before else item
    return tuple(found.values())


def replacement(step: Step, line: FastenerLine) -> tuple[Purchase, ...]:
    """The new fasteners that a line of a step takes; none if the old ones go back."""
    one_lot = table("fasteners")[line.fastener.kind].get("one_lot")
    if line.fate != "new" or (one_lot and seal(step)):  # what it is sealed with is the new bond
        return ()
    number = line.count if isinstance(line.count, int) else 1 if one_lot else None
    return (Purchase(number, describe(line.fastener), step.title, _place(step)),)


def materials(step: Step) -> tuple[Purchase, ...]:
    """What a step takes beside fasteners: a new part for one that was spoilt, and what it is sealed with."""
    thing = step.node.thing if step.node else None
    part = (Purchase(1, thing.name, step.title, _place(step)),) if step.new and isinstance(thing, Part) else ()
    return (*part, *seal(step))


def seal(step: Step) -> tuple[Purchase, ...]:
    """The sealing material that a step takes, if any."""
    thing = step.node.thing if step.node else None
    if step.kind not in ("refit", "move") or not isinstance(thing, Part) or not thing.seal:
        return ()
    return (Purchase(1, thing.seal, step.title, _place(step)),)


def _place(step: Step) -> tuple[str, ...]:
    """Where what a step is about stands in the record."""
    thing = step.node.thing if step.node else None
    return ("parts" if isinstance(thing, Part) else "preps", thing.id) if isinstance(thing, Part | Prep) else ()


def _both(one: Purchase, other: Purchase) -> Purchase:
    count = None if one.count is None or other.count is None else one.count + other.count
    return replace(one, count=count)


def describe(fastener: Fastener) -> Value:
    """A fastener in words, without its count: `screw T20, ST4.2, 16 mm (0.63 in)`."""
    _, _, detail = _sort(fastener)
    return message("fasteners/with-detail", sort=_called(fastener), detail=detail) if detail else _called(fastener)


def _called(fastener: Fastener) -> Value:
    """What is asked for in a shop: the kind before its drive, a sort before its kind."""
    if not fastener.turned:
        return one_of_sort(fastener)
    return message("fasteners/turned", kind=word("fasteners", fastener.kind, "label"), sort=sort(fastener))


def time(steps: Iterable[Step]) -> Time:
    """Recorded minutes of taking apart and refitting. Fitting, testing and looking up have no recorded time."""
    timed = [step for step in steps if step.kind in ("prepare", "remove", "move", "refit", "restore")]
    waits = tuple(
        None if isinstance(step.wait.time, Blank) else step.wait.time.value for step in _waiting(steps) if step.wait
    )
    return Time(
        sum(step.minutes or 0 for step in timed),
        sum(step.minutes is None and not (step.node and states.is_usual(step.node.thing)) for step in timed),
        waits,
    )


def _waiting(steps: Iterable[Step]) -> list[Step]:
    return [step for step in steps if step.kind == "wait"]
