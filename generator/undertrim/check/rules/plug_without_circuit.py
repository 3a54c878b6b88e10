"""A plug that is called after an airbag, a belt part or the high voltage has its circuit recorded.

## What it finds

A tether whose name, id or text names an airbag, a belt part, a seat that knows who sits on it, or high voltage, and that
has no `circuit` saying so; the same for a plug of the car under `connectors` whose tether does not say it. Where the words
leave a doubt, `circuit: ordinary` settles it. A sentence that only speaks of something beside the plug is passed over.

## Why it matters

Without its circuit a plug is an ordinary one: no wait after the battery, no caution, a meter on its pins, and orange cable
that is undone like any other.

## Bad

    parts:
      seat:
        name: Seat
        release: lift
        tethers:
          mat: {name: Occupancy mat plug, kind: plug}    # here
          side-airbag: {name: Yellow plug under the seat, kind: plug, circuit: ordinary}    # here
          module: {name: Two-way plug, kind: plug, how: Press both sides of the SRS plug and pull.}    # here
      floor-cover:
        name: Floor cover
        release: lift
        tethers:
          feed: {name: Orange cable, kind: cable}    # here
    connectors:
      belt:
        name: Belt tensioner plug    # here
        view: wires
        rows: 1
        columns: 2
        pins: {"1": {function: spare}}

warning: 'Occupancy mat plug' sounds like restraint wiring, and no 'circuit' says so (write 'circuit: restraint' and what becomes of it, or 'circuit: ordinary' where you made sure that it is not)
warning: 'side-airbag' sounds like restraint wiring, and its circuit is 'ordinary' (write 'circuit: restraint' and what becomes of it)
warning: 'Press both sides of the SRS plug and pull.' sounds like restraint wiring, and no 'circuit' says so (write 'circuit: restraint' and what becomes of it, or call it something else)
warning: 'Orange cable' sounds like high voltage, and no 'circuit' says so (write 'circuit: high-voltage' and 'then: leave', or 'circuit: ordinary' where you made sure that it is not)
warning: 'Belt tensioner plug' sounds like restraint wiring, and no tether says so (name its tether in 'at', and write 'circuit: restraint' there)

## Good

    parts:
      seat:
        name: Seat
        release: lift
        tethers:
          mat: {name: Occupancy mat plug, kind: plug, circuit: restraint, then: leave}
          buckle-lamp: {name: Lamp of the buckle, kind: plug, circuit: ordinary}
          heater: {name: Heater plug, kind: plug, how: Keep clear of the airbag plug beside it.}
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from undertrim.check.findings import Finding, Subject
from undertrim.check.instructions import sentences
from undertrim.check.phrases import Rough, compiled
from undertrim.derive.wiring.circuits import circuit
from undertrim.record.model import Tether
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.resources import table
from undertrim.words import Message, Value, WayOut, message

LEVEL = Level.WARNING

_TEXTS = ("how", "test")


@dataclass(frozen=True, slots=True)
class _Sound:
    """A circuit that words suggest: those that leave no doubt, and those that are `likely` only."""

    circuit: str
    sure: re.Pattern[str]
    likely: re.Pattern[str]

    @property
    def said(self) -> Message:
        """What the circuit is called, and as its way out how it is recorded."""
        return message(f"circuits/{self.circuit}")

    def heard(self, words: str, *, settled: bool) -> bool:
        """Whether the words suggest it; where somebody `settled` that the plug is ordinary, only if they leave no doubt."""
        return self.is_sure(words) or (not settled and bool(self.likely.search(_apart(words))))

    def is_sure(self, words: str) -> bool:
        """Whether the words leave no doubt."""
        return bool(self.sure.search(_apart(words)))


def check(subject: Subject) -> Iterator[Finding]:
    """Every tether and every plug that sounds like what it does not say it is."""
    for part in subject.record.parts.values():
        for tether in part.tethers.values():
            home = ("parts", part.id, "tethers", tether.id)
            if tether.circuit == "ordinary" and subject.intact(home):
                yield from _of_tether(tether, home, settled=(*home, "circuit") in subject.source.values)
    for plug in subject.record.connectors.values():
        place = ("connectors", plug.id, "name")
        if circuit(subject.record, plug) == "ordinary" and (heard := _heard(plug.name, settled=False)):
            found = message(
                "rules/plug-without-circuit/no-tether", words=plug.name, circuit=heard.said, id=heard.circuit
            )
            yield Finding(place, found)


def _of_tether(tether: Tether, home: Pointer, *, settled: bool) -> Iterator[Finding]:
    for key, words in _said(tether):
        if heard := _heard(words, settled=settled):
            yield Finding((*home, *key), _complaint(heard, words, settled=settled), key=not key)
            return


def _complaint(heard: _Sound, words: str, *, settled: bool) -> Message:
    facts: dict[str, Value] = {"words": words, "circuit": heard.said, "way_out": WayOut(heard.said)}
    if settled:
        return message("rules/plug-without-circuit/said-ordinary", **facts)
    if heard.is_sure(words):
        return message("rules/plug-without-circuit/unsaid", **facts)
    return message("rules/plug-without-circuit/unsaid-likely", **facts)


def _said(tether: Tether) -> Iterator[tuple[Pointer, str]]:
    """What a tether is called, and each sentence of its texts that is about itself; with the key each stands under."""
    yield ("name",), tether.name
    yield (), tether.id
    for key in _TEXTS:
        yield from (
            ((key,), f"{sentence}.") for sentence in sentences(getattr(tether, key)) if not _beside().search(sentence)
        )


def _heard(words: str, *, settled: bool) -> _Sound | None:
    if not _any_sound().may_stand_in(words):
        return None
    return next((sound for sound in _sounds() if sound.heard(words, settled=settled)), None)


def _apart(words: str) -> str:
    """The words of a name or an id that are joined by hyphens, apart."""
    return words.replace("-", " ")


@cache
def _any_sound() -> Rough:
    entries = (entry for name, entry in table("words")["circuit"].items() if name != "beside")
    return Rough(phrase for entry in entries for phrase in (*entry["sure"], *entry["likely"]))


@cache
def _sounds() -> tuple[_Sound, ...]:
    return tuple(
        _Sound(name, compiled(entry["sure"], {}), compiled(entry["likely"], {}))
        for name, entry in table("words")["circuit"].items()
        if name != "beside"
    )


@cache
def _beside() -> re.Pattern[str]:
    return compiled(table("words")["circuit"]["beside"], {})
