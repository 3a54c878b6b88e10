"""Which facts a speaker's opening wants."""

from collections.abc import Iterator

from undertrim.derive import doors
from undertrim.derive.opening_fact import Fact, known
from undertrim.record.model import Blank, Depth, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.words import Message, Value, message

_TRAVEL_SEEN = ("whole-travel", "no-glass")


def required(record: VehicleRecord, opening: SpeakerOpening) -> Iterator[Fact]:
    """All that a speaker is held against, and in a door whether a pressure sensor is there."""
    name = opening.name
    yield Fact("hole", opening.hole is not None, message("wanted-speaker/hole", opening=name))
    yield Fact("bolts", opening.bolts is not None, message("wanted-speaker/bolts", opening=name))
    flat = message("wanted-speaker/panel", opening=name)
    panel = opening.panel
    yield Fact("panel", bool(panel) and known(panel and panel.width) and known(panel and panel.height), flat)
    to_do = _depth(opening, opening.depth)
    yield Fact("depth", not to_do, to_do)
    lean = message("wanted-speaker/lean", opening=name)
    yield Fact("depth/leans", known(opening.depth and opening.depth.leans), lean)
    room = message("wanted-speaker/grille", opening=name)
    yield Fact("room_to_grille", known(opening.room_to_grille), room)
    spacer = message("wanted-speaker/spacer", opening=name)
    yield Fact("factory_spacer", known(opening.factory_spacer), spacer)
    yield Fact("impedance", known(opening.impedance), message("wanted-speaker/impedance", opening=name))
    yield Fact("channel", known(opening.channel), message("wanted-speaker/channel", opening=name))
    if opening.fed_through == "unknown":
        fed = message("wanted-speaker/fed-through", opening=name)
        yield Fact("fed_through", known=False, to_do=fed)
    if opening.bolts and opening.bolts.pattern == "circle" and opening.bolts.angle is Blank.UNKNOWN:
        yield Fact("bolts/angle", known=False, to_do=message("wanted-speaker/angle", opening=name))
    if opening.in_a_door:
        sensor = message("wanted-speaker/sensor", opening=name)
        yield Fact("crash_sensor", known(doors.sensor(record, opening)), sensor, safety=True)


def _depth(opening: SpeakerOpening, depth: Depth | None) -> Value:
    """What is left to do about a speaker's depth; empty where it says all it should."""
    if depth is None or not known(depth.clear):
        return _measure(opening, depth)
    code = ""
    if not depth.datum:
        code = "from-face"
    elif opening.in_a_door and depth.over not in _TRAVEL_SEEN:
        code = "over-travel"
    elif depth.to_glass == "unknown":
        code = "obstruction"
    return message(f"wanted-speaker/{code}", opening=opening.name) if code else ""


def _measure(opening: SpeakerOpening, depth: Depth | None) -> Message:
    """From which face to measure, and whether the glass moves behind it."""
    if not opening.in_a_door:
        return message("wanted-speaker/depth", opening=opening.name)
    glass = depth is None or depth.over != "no-glass"
    return message(f"wanted-speaker/depth-in-door{'-with-glass' if glass else ''}", opening=opening.name)
