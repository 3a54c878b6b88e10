"""Which facts a tweeter's place wants."""

from collections.abc import Iterator

from undertrim.derive import doors
from undertrim.derive.opening_fact import Fact, known
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.words import message


def required(record: VehicleRecord, opening: TweeterOpening) -> Iterator[Fact]:
    """Its sizes as it is mounted, how it is fed, and in a door whether a pressure sensor is there."""
    name = opening.name
    yield Fact("mount", known(opening.mount), message("wanted-tweeter/mount", opening=name))
    yield from _sizes(opening)
    yield Fact("room_in_front", known(opening.room_in_front), message("wanted-tweeter/front", opening=name))
    yield Fact("factory", known(opening.factory), message("wanted-tweeter/factory", opening=name))
    yield Fact("feed", known(opening.feed), message("wanted-tweeter/feed", opening=name))
    yield Fact("channel", known(opening.channel), message("wanted-speaker/channel", opening=name))
    yield from _filtered(opening)
    if opening.in_a_door:
        sensor = message("wanted-speaker/sensor", opening=name)
        yield Fact("crash_sensor", known(doors.sensor(record, opening)), sensor, safety=True)


def _sizes(opening: TweeterOpening) -> Iterator[Fact]:
    """What the mount is measured by."""
    name, cup = opening.name, opening.cup
    if opening.mount == "flush":
        yield Fact(
            "cut_out", known(opening.cut_out) or cup is not None, message("wanted-tweeter/cut-out", opening=name)
        )
        told = known(opening.depth and opening.depth.clear) and bool(opening.depth and opening.depth.datum)
        yield Fact("depth", told or cup is not None, message("wanted-tweeter/depth", opening=name))
    if opening.mount == "surface":
        yield Fact("flat", known(opening.flat), message("wanted-tweeter/flat", opening=name))
    if opening.mount == "angled":
        yield Fact("cup", cup is not None or known(opening.flat), message("wanted-tweeter/cup", opening=name))
        yield Fact("angle", known(opening.angle), message("wanted-tweeter/angle", opening=name))


def _filtered(opening: TweeterOpening) -> Iterator[Fact]:
    """The filter that stays, or the place for a new one; the impedance of what is there."""
    name = opening.name
    if opening.feed == "crossover":
        yield Fact("corner", known(opening.corner), message("wanted-tweeter/corner", opening=name))
    else:
        there = opening.crossover_place is not None
        yield Fact("crossover_place", there, message("wanted-tweeter/crossover-place", opening=name))
    if opening.factory == "yes":
        yield Fact("impedance", known(opening.impedance), message("wanted-tweeter/impedance", opening=name))
