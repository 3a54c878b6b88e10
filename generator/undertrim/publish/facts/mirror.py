"""A record read for the other drive side, as data: what is known there, what to ask, what is not there."""

from typing import Any

from undertrim.derive import mirroring
from undertrim.record.model import Side, VehicleRecord

Data = dict[str, Any]


def mirror(record: VehicleRecord, address: str, drive_side: Side) -> Data:
    """What the record knows of sides in cars of a drive side; `unsaid` are the places it says nothing of, each list with its names."""
    facts = mirroring.mirrored(record, drive_side)
    called = {place: thing.name for place, thing in mirroring.things(record)}
    not_there = [place for place, thing in mirroring.things(record) if not mirroring.exists(thing, drive_side)]
    unsaid = mirroring.unsaid(record, drive_side)
    return {
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


def _known(fact: mirroring.Sided, drive_side: Side) -> Data:
    words = mirroring.side_words(fact.there, drive_side) if fact.fact == "side" and fact.there else fact.there
    return {**_about(fact), "there": fact.there, "words": words}


def _question(fact: mirroring.Sided) -> Data:
    return {**_about(fact), "ask": fact.ask}


def _about(fact: mirroring.Sided) -> Data:
    return {"place": fact.place, "name": fact.name, "fact": fact.fact, "recorded": fact.recorded}
