"""An opening as it is reckoned while the evidence disagrees on it: with the cautious value of every open dispute."""

from undertrim.derive import doors
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.disputed import open_disputes, reckoned
from undertrim.record.field_titles import FieldTitles, field_titles
from undertrim.record.model import Blank, Opening, VehicleRecord
from undertrim.words import Message, message

ANYWHERE = ("sound",)
"""Sections of which a fact counts for gear in any opening."""


def cautious(record: VehicleRecord, opening: Opening) -> tuple[Opening, tuple[Message, ...]]:
    """The opening with the cautious value of every fact in dispute, and a note on each, and on each about the factory sound.

    Where no claim is known to be the safe one the fact counts as unknown; a settled dispute changes nothing. Whether there is a
    pressure sensor is what its door says, not what this opening says.
    """
    own = open_disputes(record, "openings", opening.id)
    sound = [dispute for section in ANYWHERE for dispute in open_disputes(record, section)]
    notes = tuple(_note(dispute) for dispute in (*own, *sound))
    opening = reckoned(record).openings[opening.id] if own else opening
    return opening.with_sensor(doors.sensor(record, opening)), notes


def _note(dispute: Dispute) -> Message:
    section, name, *keys = dispute.conflict.about.split("/")
    titles = field_titles((section, name, *keys)).titles
    fact = FieldTitles(titles[2:] if section == "openings" else titles)
    cautious = message("facts/unknown") if dispute.cautious == Blank.UNKNOWN else dispute.cautious
    return message("fit/disputed", fact=fact, cautious=cautious)
