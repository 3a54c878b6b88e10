"""A record read for the other drive side, as data: what is known there, what to ask, what is not there."""

from typing import Any

from undertrim.derive import mirroring
from undertrim.publish.encoding import said
from undertrim.record.model import Side, VehicleRecord
from undertrim.words import Value, message

Data = dict[str, Any]


def mirror(record: VehicleRecord, address: str, drive_side: Side) -> Data:
    """What the record knows of sides in cars of a drive side; `unsaid` are the places it says nothing of, each list with its names."""
    facts = mirroring.mirrored(record, drive_side)
    called = {place: thing.name for place, thing in mirroring.things(record)}
    not_there = [place for place, thing in mirroring.things(record) if not mirroring.exists(thing, drive_side)]
    unsaid = mirroring.unsaid(record, drive_side)
    shown: Data = said(
        {
            "vehicle": address,
            "drive_side": drive_side,
            "recorded_on": record.vehicle.drive_side[0],
            "known": [_known(fact, drive_side) for fact in facts if fact.there is not None],
            "questions": [_question(fact) for fact in facts if fact.there is None],
            "not_there": not_there,
            "not_there_names": [called[place] for place in not_there],
            "unsaid": list(unsaid),
            "unsaid_names": [called[place] for place in unsaid],
        }
    )
    return shown


def _known(fact: mirroring.Sided, drive_side: Side) -> Data:
    there = fact.there
    words = mirroring.side_words(there, drive_side) if fact.fact == "side" and isinstance(there, str) else _value(there)
    was = _value(fact.recorded) if fact.recorded != there else ""
    return {**_about(fact), "there": there, "words": words, "was": was}


def _question(fact: mirroring.Sided) -> Data:
    return {**_about(fact), "ask": fact.ask, "was": _value(fact.recorded)}


def _about(fact: mirroring.Sided) -> Data:
    words = message(f"mirror/about-{fact.fact}", fastener=fact.fastener) if fact.fact in _SAID else ""
    return {"place": fact.place, "name": fact.name, "fact": fact.fact, "fact_words": words, "recorded": fact.recorded}


_SAID = ("direction", "edges", "text")
"""Facts whose value does not say by itself what it is."""


def _value(found: Value | None) -> Value:
    """A side or a direction in words; what else is recorded says itself."""
    return message(f"sides/{found}") if isinstance(found, str) and found in mirroring.OTHER else found or ""
