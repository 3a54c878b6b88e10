"""Looks at one file: what its schema and the rules for its kind say, and what the rules for all of them need to know of it."""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from undertrim.check import borrowed, joints
from undertrim.check.allowing import Allow, allows
from undertrim.check.consequential import Consequential
from undertrim.check.copies import sections
from undertrim.check.findings import Card, Details, Finding, GearSubject, Subject
from undertrim.check.register import GEAR_RULES, RECORD_RULES
from undertrim.record import spreading
from undertrim.record.digests import joined
from undertrim.record.gear import GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Data, Pointer
from undertrim.record.store import Entry
from undertrim.words import message
from undertrim.work.crew import Failed, Fault
from undertrim.work.limits import MEGABYTES, SECONDS

CRASH, LIMIT = "crash", "limit"
"""What stands in the place of a rule where no rule could speak: we failed, or the file asks for more than a record may."""


@dataclass(frozen=True)
class Looked:
    """What one file yielded: problems before any allow is applied, the allows, and its card for the collection rules.

    `complete` tells that the rules looked at the whole of the record; `earlier` that it is of a format before the newest. `key` is the
    one that it is remembered by, if it is.
    """

    path: Path
    id: str
    problems: tuple[Problem, ...]
    card: Card | None
    allows: tuple[Allow, ...]
    complete: bool
    earlier: bool = False
    key: str = field(default="", compare=False)


def look(entry: Entry) -> Looked:
    """Put one file through the rules for its kind."""
    problems = tuple(dict.fromkeys((*entry.problems, *_single(entry))))  # what is said once of many is told once
    complete = entry.record is not None and not entry.dropped
    allowed, earlier = tuple(allows(entry.source)), spreading.is_earlier(entry.source)
    return Looked(entry.source.path, entry.id, problems, card(entry), allowed, complete, earlier)


def neighbour(entry: Entry) -> Looked:
    """A file that is only read for what the collection rules want to know of it."""
    complete = entry.record is not None and not entry.dropped
    return Looked(entry.source.path, entry.id, (), card(entry), tuple(allows(entry.source)), complete)


def crashed(path: Path, rule_id: str, error: Exception) -> Problem:
    """The problem that names a rule which failed."""
    said = message("check/rule-failed", rule=rule_id, error=f"{type(error).__name__}: {str(error)[:200]}")
    return Problem(path, Position(1, 1), Level.ERROR, CRASH, said)


_LIMITS = {Fault.TIME: SECONDS, Fault.MEMORY: MEGABYTES}


def unseen(path: Path, stem: str, why: Failed) -> Looked:
    """A file that could not be looked at: it took too long, needed too much, or ended the process that did it."""
    limit = _LIMITS.get(why.fault)
    said = message("check/file-failed", why=why.said)
    if limit:
        said = message("check/file-too-large", why=why.said, limit=limit)
    problem = Problem(path, Position(1, 1), Level.ERROR, LIMIT if limit else CRASH, said)
    return Looked(path, stem, (problem,), None, (), complete=False)


def _single(entry: Entry) -> Iterator[Problem]:
    """What the rules for its kind say of one record."""
    consequential = Consequential(entry)
    if isinstance(entry.record, VehicleRecord):
        subject = Subject(entry, entry.record)
        for rule_id, rule in RECORD_RULES.items():
            yield from _said(entry, consequential, rule_id, rule.LEVEL, partial(rule.check, subject))
    elif isinstance(entry.record, GearRecord):
        gear = GearSubject(entry, entry.record)
        for rule_id, gear_rule in GEAR_RULES.items():
            yield from _said(entry, consequential, rule_id, gear_rule.LEVEL, partial(gear_rule.check_gear, gear))


def _said(
    entry: Entry, consequential: Consequential, rule_id: str, level: Level, ask: Callable[[], Iterator[Finding]]
) -> Iterator[Problem]:
    """The findings of one rule, placed; what only follows from what the schema refused is left out."""
    try:
        findings = list(ask())
    except MemoryError:
        raise  # the file's own doing, and no rule would fare better
    except Exception as error:  # noqa: BLE001 - whatever it is, the run goes on and the rule is named
        yield crashed(entry.source.path, rule_id, error)
        return
    for finding in borrowed.told(entry, rule_id, findings):
        if not consequential.hold(finding):
            position = entry.source.position(finding.pointer, key=finding.key)
            yield Problem(entry.source.path, position, level, rule_id, finding.said)


def card(entry: Entry) -> Card | None:
    """What the collection rules want to know of one file; None where the schema refused some of it."""
    if entry.record is None or any(place[:1] in (("vehicle",), ("gear",)) for place in entry.dropped):
        return None
    section, facts = (
        ("vehicle", entry.record.vehicle) if isinstance(entry.record, VehicleRecord) else ("gear", entry.record.gear)
    )
    typed, met, held = entry.source.data[section], joints.cut(entry), sections(entry)
    marks = {
        "facts": joined(_text(typed)),
        "joints": joined(_text(met)) if met else "",
        "whole": joined(_text(entry.source.data)),
    }
    more = partial(Details, _places(entry, section, held), met)
    return Card(entry.source.path, entry.address, facts, typed, dict(_looks(entry)), held, marks, more)


def _places(entry: Entry, section: str, held: Iterable[str]) -> Mapping[Pointer, Position]:
    """Where things stand that a rule for the collection may speak of."""
    shown = (section, *joints.PLACED)
    places = {
        pointer: place
        for pointer, place in entry.source.values.items()
        if pointer[:1] and (pointer[0] in shown or (pointer[0] == "evidence" and len(pointer) == 2))
    }
    return {**places, **{(name,): entry.source.position((name,), key=True) for name in held}}


_AT_A_CAR = ("measured", "seen")


def _looks(entry: Entry) -> Iterator[tuple[str, str]]:
    """Each look at a car as typed, in short; none where the schema refused some of the evidence."""
    evidence = _evidence(entry)
    for name, piece in evidence.items() if isinstance(evidence, dict) else ():
        if isinstance(piece, dict) and piece.get("how") in _AT_A_CAR:
            yield name, joined(_text(piece))


def _text(data: Data) -> str:
    return json.dumps(data, sort_keys=True, ensure_ascii=False)


def _evidence(entry: Entry) -> Data:
    """The evidence as typed; None where there is none, and where the schema refused some of it."""
    refused = any(place[:1] in ((), ("evidence",)) for place in entry.dropped)
    return None if refused or not isinstance(entry.source.data, dict) else entry.source.data.get("evidence")
