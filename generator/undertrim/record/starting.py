"""The text of a new record that begins with what it shares with another one: what nobody knows of the new car is unknown."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from undertrim.record.sharing import ALL, FIELD, SECTIONS, groups
from undertrim.record.source import Pointer, Source
from undertrim.record.yaml_text import as_typed

UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Start:
    """The new car: what people call it, and its first month of build with the first that is not covered."""

    make: str
    model: str
    first: str
    end: str


@dataclass(frozen=True, slots=True)
class Notes:
    """What the comments of the file say: lines at its head, what of the sides, and lines above what is unknown."""

    head: Sequence[str]
    sides: str
    unknown: Sequence[str]


def started(start: Start, name: str, other: Source, notes: Notes, left: Collection[Pointer] = ()) -> str:
    """The text for a car that has all in common with the record `other`, which is called by `name`, but for what is `left` out."""
    return "".join(f"{line}\n" for line in _lines(start, name, other, notes, left))


def unsure(other: Source) -> set[Pointer]:
    """The things of a record that nobody may take: the battery's preparations, since what else those ask of a car nobody knows, and what is in dispute."""
    preps = other.data.get("preps", {}).items()
    conflicts = other.data.get("conflicts", {}).values()
    about = (tuple(item["about"].split("/")[:2]) for item in conflicts if "settled_by" not in item)
    disputed = {place for place in about if place[0] in SECTIONS}
    return {("preps", name) for name, prep in preps if "battery" in prep.get("sets", {})} | disputed


def _lines(start: Start, name: str, other: Source, notes: Notes, left: Collection[Pointer]) -> Iterator[str]:
    data = other.data
    sides = ", ".join(data["vehicle"]["drive_side"])
    make, model = (as_typed(text, in_brackets=False) for text in (start.make, start.model))
    yield from (*_comments(notes.head), "format: 2", "", "vehicle:", f"  make: {make}", f"  model: {model}")
    yield f"  built: {{from: {start.first}, to: {start.end}}}"
    yield f"  drive_side: [{sides}]    # {notes.sides}"
    yield from (f"  high_voltage: {UNKNOWN}", "", *sharing(name, other, left), "")
    yield from _comments(notes.unknown)
    yield f"restraint: {{wait: {UNKNOWN}, memory_keeper: {UNKNOWN}, read_faults_first: {UNKNOWN}}}"
    if "sound" in data:
        yield from ("sound:", f"  factory: {{output: {UNKNOWN}}}")


def sharing(name: str, other: Source, left: Collection[Pointer]) -> Iterator[str]:
    """The lines that take all from the record `other`, which is called by `name`, but for what is `left` out."""
    yield from (f"{FIELD}:", f"  {name}:")
    for section in SECTIONS:
        wanted = _wanted(other, section, left)
        if wanted:
            yield f"    {section}: {wanted[0] if len(wanted) == 1 else _listed(wanted)}"


def _wanted(other: Source, section: str, left: Collection[Pointer]) -> list[str]:
    """What is asked for of a section: all, or groups that are whole and single things."""
    names = [name for name in other.data.get(section, {}) if (section, name) not in left]
    if len(names) == len(other.data.get(section, {})):
        return [ALL] if names else []
    whole = {key: things for key, things in groups(other.as_typed, section).items() if set(things) <= set(names)}
    grouped = {name: key for key, things in whole.items() for name in things}
    return list(dict.fromkeys(grouped.get(name, name) for name in names))


def _listed(names: Sequence[str]) -> str:
    return f"[{', '.join(names)}]"


def _comments(lines: Sequence[str]) -> Iterator[str]:
    return (f"# {line}" for line in lines)
