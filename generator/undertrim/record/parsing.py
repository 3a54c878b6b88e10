"""Text to plain data: through the parser of YAML, past what it would not read, and back to what it would leave out."""

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError
from ruamel.yaml.events import Event

from undertrim.record import retyping, swallowed, syntax, unseen_signs
from undertrim.record.problem import Position
from undertrim.record.reader import Reader, StopReading
from undertrim.record.retyping import Mend


@dataclass(frozen=True, slots=True)
class Parsed:
    """What was read, whether that is all, and the lines that were read as they were meant."""

    reader: Reader
    whole: bool
    mends: tuple[Mend, ...]


@dataclass(frozen=True, slots=True)
class _Reading:
    """One pass: whether it came to the end, and what stopped the parser, if it did."""

    reader: Reader
    whole: bool
    fault: syntax.Fault | None = None


def parse(text: str, shown: Path) -> Parsed:
    """Reads a text; what is wrong with it is among the problems of the reader, by place."""
    lines, mends = _visible(syntax.lines(text))
    reading = _read(lines, shown)
    rest = reading.fault
    if rest:
        retyped = retyping.readable(lines)
        lines, rest = retyped.lines, retyped.rest
        mends += retyped.mends
        reading = _read(lines, shown) if retyped.mends else reading
    if reading.whole:
        mends += retyping.rejoin(reading.reader, lines)
        mends += retyping.trimmed(reading.reader, lines)
    told = _tell(reading.reader, mends, rest)
    if mends:
        _within(reading.reader, syntax.lines(text))
    return Parsed(reading.reader, reading.whole and told, tuple(mends))


def _read(lines: Sequence[str], shown: Path) -> _Reading:
    reader = Reader(shown)
    watch = swallowed.Watch(lines, reader.report)
    text = "\n".join(lines)
    try:
        unmerged = list(syntax.conflict_marks(text))
        for fault in unmerged:
            reader.report(fault.position, fault.said)
        if not unmerged:
            for event in watch.over(_events(text)):
                reader.feed(event)
        return _Reading(reader, not unmerged)
    except StopReading:
        return _Reading(reader, whole=False)
    except YAMLError as error:
        fault = syntax.explain(error, text)
        return _Reading(reader, False, None if watch.accounts_for(fault.position) else fault)


def _events(text: str) -> Iterator[Event]:
    parser = YAML(typ="safe", pure=False)
    yield from parser.parse(text)


def _visible(lines: list[str]) -> tuple[list[str], list[Mend]]:
    """The lines without signs that nobody sees, and with straight quotes."""
    mends = []
    for number, line in enumerate(lines):
        found = list(unseen_signs.places(line))
        for place in found:
            edit = ((number, unseen_signs.without(line)),) if place == found[0] else ()
            mends.append(Mend(Position(number + 1, place + 1), unseen_signs.complaint(line[place]), edit, certain=True))
    for mend in mends:
        lines = retyping.with_line(lines, mend.edit) if mend.edit else lines
    lines, curly = retyping.straight(lines)
    return lines, mends + curly


def _tell(reader: Reader, mends: Sequence[Mend], rest: syntax.Fault | None) -> bool:
    """Adds what was mended and what could not be, and puts all problems in the order of the file; False where there are too many."""
    told = False
    with suppress(StopReading):
        for mend in mends:
            if mend.said:
                reader.report(mend.position, mend.said)
        if rest:
            reader.report(rest.position, rest.said)
        told = True
    reader.problems.sort(key=lambda problem: problem.position)
    return told


def _within(reader: Reader, lines: Sequence[str]) -> None:
    """Lets no place lie behind the end of its line as it was typed: lines that were mended are longer."""

    def typed(place: Position) -> Position:
        return Position(place.line, min(place.column, max(len(lines[place.line - 1]), 1)))

    for places in (reader.values, reader.keys):
        places.update({pointer: typed(place) for pointer, place in places.items() if place.line <= len(lines)})
    reader.problems[:] = [replace(problem, position=typed(problem.position)) for problem in reader.problems]
