"""What readings can be besides the functions of a radio: an igniter, a fuse that is out, a bad ground. meter-suspects.js holds the same logic."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.meter import Candidate, Finding, inside, weigh
from undertrim.derive.wiring.readings import Reading
from undertrim.resources import table
from undertrim.words import Word, word


@dataclass(frozen=True, slots=True)
class Suspect:
    """One other explanation: its words, what to do, and for which readings it is named (data/functions.toml says what the fields mean)."""

    id: str
    words: Word
    do: Word
    where: str
    stop: bool
    dead: bool
    expects: tuple[str, ...]
    groups: tuple[str, ...]
    states: tuple[str, ...]
    reads: Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Suspicion:
    """A suspect with the texts of the readings that bring it up."""

    suspect: Suspect
    readings: tuple[str, ...]


@cache
def suspects() -> tuple[Suspect, ...]:
    """The table, in the order in which its entries are named."""
    return tuple(_suspect(id_, row) for id_, row in table("functions")["suspect"].items())


def _suspect(id_: str, row: Mapping[str, Any]) -> Suspect:
    return Suspect(
        id_,
        word("functions", "suspect", id_, "words"),
        word("functions", "suspect", id_, "do"),
        row["where"],
        stop=row.get("stop", False),
        dead=row.get("dead", False),
        expects=tuple(row.get("expects", ())),
        groups=tuple(row.get("groups", ())),
        states=tuple(row.get("states", ())),
        reads={kind: tuple(bands) for kind, bands in row["reads"].items()},
    )


def suspicions(readings: Sequence[Reading], recorded: Candidate | None = None) -> tuple[Suspicion, ...]:
    """Every suspect that a reading brings up. `recorded` is what the readings say of the record's function; None for an unknown wire."""
    found = []
    for suspect in suspects():
        texts = [
            reading.text
            for index, reading in enumerate(readings)
            if _reads(suspect, reading) and _holds(suspect, index, readings, recorded)
        ]
        if texts:
            found.append(Suspicion(suspect, tuple(texts)))
    return tuple(found)


def stops(found: Sequence[Suspicion]) -> bool:
    """Whether nothing more may be measured on the wire."""
    return any(one.suspect.stop for one in found)


def _reads(suspect: Suspect, reading: Reading) -> bool:
    bands = suspect.reads.get(reading.kind, ())
    stated = not suspect.states or reading.state in suspect.states
    return stated and any(inside(reading, functions().bands[band]) for band in bands)


def _holds(suspect: Suspect, index: int, readings: Sequence[Reading], recorded: Candidate | None) -> bool:
    if suspect.dead and any(map(_has_voltage, readings)):
        return False
    if suspect.where == "instead":
        return recorded is not None and _instead(suspect, recorded, recorded.findings[index])
    if suspect.where == "unrecorded":
        return recorded is None
    if suspect.where == "lone":
        explained = recorded is not None and recorded.standing == "agrees"
        return not explained and weigh(readings)[0].standing == "disagrees"
    return recorded is None or recorded.findings[index].verdict != "agrees"


def _instead(suspect: Suspect, recorded: Candidate, finding: Finding) -> bool:
    """Whether the record's function should give something else there, of the bands and functions that the suspect is about."""
    concerned = not suspect.groups or recorded.function.group in suspect.groups
    return (
        concerned and finding.verdict == "disagrees" and finding.band is not None and finding.band.id in suspect.expects
    )


def _has_voltage(reading: Reading) -> bool:
    return reading.kind == "volts" and not inside(reading, functions().bands["zero"])
