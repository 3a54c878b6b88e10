"""Puts what came off in somebody's hands into a record, part by part, unless the check would refuse it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from undertrim.check.runner import check_entry
from undertrim.check.taking import laid
from undertrim.derive.claims import sources
from undertrim.derive.evidence.taken import USUAL
from undertrim.record.changing import CannotPut, Change, put
from undertrim.record.changing.edits import at
from undertrim.record.claims import Answer
from undertrim.record.following import FOLLOWING, Following
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Data, Pointer, Source, read_text
from undertrim.record.stamping import unstamped
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message

_WAITS = {"parts": "after", "openings": "behind"}
"""Where things say what must be off before them."""


@dataclass(frozen=True, slots=True)
class PartSeen:
    """A part that came off: its id, its `fields` as the whole of a record has them, and the parts and openings that were behind it (section and id).

    Of a part that the record has, `fields` are those that are otherwise. `unsure` tells that some of it could not be told: then what
    is usual stays named beside who looked.
    """

    id: str
    fields: Mapping[str, Data]
    behind: tuple[tuple[str, str], ...] = ()
    unsure: bool = False


@dataclass(frozen=True, slots=True)
class Added:
    """The record with the part, and what the check finds that it did not find before; `refused` says why there is none."""

    text: str = ""
    problems: tuple[Problem, ...] = field(default=())
    refused: Message | None = None


def add(place: Workspace, entry: Entry, part: PartSeen, seen: Answer) -> Added:
    """The record with one part, seen as an answer says it was (by whom, when, at which car). Nothing is written."""
    was = entry
    if "verified" in entry.source.data:  # its stamp vouched for other facts
        entry = place.entry(entry.path, read_text(unstamped(entry.source), entry.source.path))

    def read(text: str) -> Source:
        return place.whole(entry.path, read_text(text, entry.source.path))

    try:
        source = entry.source
        for change in _changes(entry.source, part, seen):
            source = put(source, change, read)
    except CannotPut as error:
        return Added(refused=error.said)
    after = place.entry(entry.path, source.as_typed)
    known = {(problem.rule, problem.message) for problem in check_entry(was)}
    found = tuple(one for one in check_entry(after) if (one.rule, one.message) not in known)
    errors = [one for one in found if one.level is Level.ERROR]
    return Added(problems=found, refused=errors[0].said if errors else None, text=laid(place, after)[0])


def _changes(source: Source, part: PartSeen, seen: Answer) -> list[Change]:
    name, new = sources.evidence_of(source, seen)
    home: Pointer = ("parts", part.id)
    stands = at(source.data, home)
    made = [new] if new else []
    if stands is None:
        whole = {**part.fields, sources.SOURCE: name}
        follows = FOLLOWING["id"](part.id, {}) == Following(whole.get("name"))
        typed = {key: said for key, said in whole.items() if not (follows and key == "name")}
        made.append(Change(home, typed, whole))
    else:
        made += [Change((*home, key), said) for key, said in part.fields.items() if stands.get(key) != said]
        made.append(Change((*home, sources.SOURCE), _named(source, home, name, unsure=part.unsure)))
    for section, thing in part.behind:
        waits: Pointer = (section, thing, _WAITS[section])
        known = at(source.data, waits) or []
        if part.id not in known:
            made.append(Change(waits, [*known, part.id]))
    return made


def _named(source: Source, home: Pointer, name: str, *, unsure: bool) -> str | list[str]:
    """Who has seen the part: what was only usual goes, unless some of it could not be told."""
    usual = [key for key, piece in source.data.get("evidence", {}).items() if piece.get("how") == USUAL]
    known = [one for one in sources.names_at(source, home) if unsure or one not in usual]
    known += [name] if name not in known else []
    return known if len(known) > 1 else name
