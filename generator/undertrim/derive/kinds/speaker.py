"""Which facts a speaker's opening wants."""

from collections.abc import Iterator

from undertrim.derive import doors
from undertrim.derive.opening_fact import Fact, known
from undertrim.record.model import Blank, Depth, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerOpening

_TRAVEL_SEEN = ("whole-travel", "no-glass")


def required(record: VehicleRecord, opening: SpeakerOpening) -> Iterator[Fact]:
    """All that a speaker is held against, and in a door whether a pressure sensor is there."""
    name = f"'{opening.name}'"
    yield Fact("hole", opening.hole is not None, f"measure the hole of {name}")
    yield Fact("bolts", opening.bolts is not None, f"count and measure the bolt holes of {name}")
    flat = f"measure the flat panel round the hole of {name}"
    panel = opening.panel
    yield Fact("panel", bool(panel) and known(panel and panel.width) and known(panel and panel.height), flat)
    to_do = _depth(opening, opening.depth)
    yield Fact("depth", not to_do, to_do)
    lean = (
        f"measure how far what is behind {name} leans against the mounting face, or write 'none' where it stands square"
    )
    yield Fact("depth/leans", known(opening.depth and opening.depth.leans), lean)
    room = f"measure the room from the mounting face of {name} to the inside of its grille"
    yield Fact("room_to_grille", known(opening.room_to_grille), room)
    spacer = f"measure the height of the factory spacer of {name}, or write 'none'"
    yield Fact("factory_spacer", known(opening.factory_spacer), spacer)
    yield Fact("impedance", known(opening.impedance), f"read or measure the impedance of the factory speaker of {name}")
    yield Fact("channel", known(opening.channel), f"find out which channel feeds {name}")
    if opening.fed_through == "unknown":
        fed = f"find out what is between the channel and {name}: nothing, a capacitor or a crossover"
        yield Fact("fed_through", known=False, to_do=fed)
    if opening.bolts and opening.bolts.pattern == "circle" and opening.bolts.angle is Blank.UNKNOWN:
        yield Fact("bolts/angle", known=False, to_do=f"measure at which angle a bolt hole of {name} stands")
    if opening.in_a_door:
        sensor = f"look up whether the door of {name} holds a crash pressure sensor"
        yield Fact("crash_sensor", known(doors.sensor(record, opening)), sensor, safety=True)


def _depth(opening: SpeakerOpening, depth: Depth | None) -> str:
    """What is left to do about a speaker's depth; empty where it says all it should."""
    name, door = f"'{opening.name}'", opening.in_a_door
    if depth is None or not known(depth.clear):
        glass = " over the whole glass travel" if door and (depth is None or depth.over != "no-glass") else ""
        return f"measure the depth of {name} from the {'door skin' if door else 'face the speaker sits on'}{glass}"
    if not depth.datum:
        return f"find out from which face the depth of {name} was measured"
    if door and depth.over not in _TRAVEL_SEEN:
        return f"measure the depth of {name} again, over the whole glass travel"
    if depth.to_glass == "unknown":
        return f"see what ends the depth of {name}, and write it as 'obstruction': until then it counts as glass"
    return ""
