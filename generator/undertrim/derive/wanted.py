"""Which facts an opening wants by its kind, which of them are known, and what to do about the others."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.record.model import Blank, Depth, Opening, VehicleRecord

_TRAVEL_SEEN = ("whole-travel", "no-glass")


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact about an opening, by the keys that lead to it joined with '/'; `to_do` says how to find it out."""

    key: str
    known: bool
    to_do: str
    safety: bool = False

    @property
    def name(self) -> str:
        """What it is called: `face width`."""
        return self.key.replace("/", " ").replace("_", " ")


def wanted(record: VehicleRecord, opening: Opening) -> tuple[Fact, ...]:
    """All facts that a receiver or speaker opening wants."""
    return tuple(_receiver(opening) if opening.kind == "receiver" else _speaker(record, opening))


def lacking(record: VehicleRecord, opening: Opening) -> tuple[Fact, ...]:
    """Those that are not recorded, or recorded as unknown."""
    return tuple(fact for fact in wanted(record, opening) if not fact.known)


def _receiver(opening: Opening) -> Iterator[Fact]:
    name, face = f"'{opening.name}'", opening.face
    yield Fact("face/width", _known(face and face.width), f"measure the width of {name} from the front")
    yield Fact("face/height", _known(face and face.height), f"measure the height of {name} from the front")
    depth = f"measure the depth of {name} from the front of the dash to the first thing in the way"
    from_face = f"find out from which face the depth of {name} was measured"
    clear = _known(opening.depth and opening.depth.clear)
    told = clear and bool(opening.depth and opening.depth.datum)
    yield Fact("depth", told, from_face if clear else depth)
    room = f"measure the clear room before the dash around {name}, up to vents, levers and switches"
    front = opening.clear_front
    yield Fact("clear_front", bool(front) and _known(front and front.width) and _known(front and front.height), room)
    yield Fact("kit", _known(opening.kit), f"find out whether {name} needs a dash kit")


def _speaker(record: VehicleRecord, opening: Opening) -> Iterator[Fact]:
    name = f"'{opening.name}'"
    yield Fact("hole", opening.hole is not None, f"measure the hole of {name}")
    yield Fact("bolts", opening.bolts is not None, f"count and measure the bolt holes of {name}")
    flat = f"measure the flat panel round the hole of {name}"
    panel = opening.panel
    yield Fact("panel", bool(panel) and _known(panel and panel.width) and _known(panel and panel.height), flat)
    to_do = _depth(opening, opening.depth)
    yield Fact("depth", not to_do, to_do)
    lean = (
        f"measure how far what is behind {name} leans against the mounting face, or write 'none' where it stands square"
    )
    yield Fact("depth/leans", _known(opening.depth and opening.depth.leans), lean)
    room = f"measure the room from the mounting face of {name} to the inside of its grille"
    yield Fact("room_to_grille", _known(opening.room_to_grille), room)
    spacer = f"measure the height of the factory spacer of {name}, or write 'none'"
    yield Fact("factory_spacer", _known(opening.factory_spacer), spacer)
    yield Fact(
        "impedance", _known(opening.impedance), f"read or measure the impedance of the factory speaker of {name}"
    )
    yield Fact("channel", _known(opening.channel), f"find out which channel feeds {name}")
    if opening.fed_through == "unknown":
        fed = f"find out what is between the channel and {name}: nothing, a capacitor or a crossover"
        yield Fact("fed_through", known=False, to_do=fed)
    if opening.bolts and opening.bolts.pattern == "circle" and opening.bolts.angle is Blank.UNKNOWN:
        yield Fact("bolts/angle", known=False, to_do=f"measure at which angle a bolt hole of {name} stands")
    if opening.in_a_door:
        sensor = f"look up whether the door of {name} holds a crash pressure sensor"
        yield Fact("crash_sensor", _known(doors.sensor(record, opening)), sensor, safety=True)


def _depth(opening: Opening, depth: Depth | None) -> str:
    """What is left to do about a speaker's depth; empty where it says all it should."""
    name, door = f"'{opening.name}'", opening.in_a_door
    if depth is None or not _known(depth.clear):
        glass = " over the whole glass travel" if door and (depth is None or depth.over != "no-glass") else ""
        return f"measure the depth of {name} from the {'door skin' if door else 'face the speaker sits on'}{glass}"
    if not depth.datum:
        return f"find out from which face the depth of {name} was measured"
    if door and depth.over not in _TRAVEL_SEEN:
        return f"measure the depth of {name} again, over the whole glass travel"
    if depth.to_glass == "unknown":
        return f"see what ends the depth of {name}, and write it as 'obstruction': until then it counts as glass"
    return ""


def _known(value: object) -> bool:
    """Whether somebody has given an answer; 'none' is one."""
    return value not in (None, "", Blank.UNKNOWN)
