"""What is drawn of a piece of gear by itself, by the class of its kind. Gear that has no size of its own, such as a harness, is not drawn."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from undertrim.derive.fit.stock import Gear
from undertrim.publish.facts import dimensions
from undertrim.publish.facts.measures import measure
from undertrim.publish.pictures.drawings.gear import Block, Outline, Sketch, circle, corners
from undertrim.record.model import Blank, Bolts, Face, Hole
from undertrim.record.model.kinds.amplifier import AmplifierGear
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.record.model.kinds.tweeter import CrossoverGear, TweeterGear
from undertrim.record.units import Quantity
from undertrim.words import Value, message

_Parts = tuple[list[Outline], list[Block], Bolts | None]


def sketch(item: Gear) -> Sketch | None:
    """What is drawn of it; None where nothing is measured, or there is nothing to draw of its kind."""
    made = SKETCHES.get(type(item.facts))
    if made is None:
        return None
    front, side, bolts = made(item.facts)
    holes = _holes(bolts) if bolts else []
    if not any(one.width.mm is not None for one in front) and not side:
        return None
    said = dimensions.bolts(bolts) if bolts else ""
    return Sketch(message("gear-page/drawing", gear=item.name), front, side, holes, said)


def _holes(bolts: Bolts) -> list[tuple[float, float]]:
    if bolts.pattern == "circle":
        return circle(bolts.count, _mm(bolts.diameter), bolts.angle.value if isinstance(bolts.angle, Quantity) else 0)
    return corners(_mm(bolts.width), _mm(bolts.height))


def _mm(value: Quantity | Blank | None) -> float | None:
    return value.value if isinstance(value, Quantity) else None


_ELSEWHERE = {"body": "fit-receiver/body", "flange": "fit-speaker/flange", "width": "outlines/width"}
"""Parts that have their word with what they are compared with."""


def _named(part: str, size: Value) -> Value:
    return message("gear-page/sized", part=message(_ELSEWHERE.get(part, f"gear-page/part-{part}")), size=size)


def _face(pen: Any, part: str, face: Face | None) -> Iterator[Outline]:
    if face:
        yield Outline(pen, part, _named(part, dimensions.face(face)), measure(face.width), measure(face.height))


def _hole(pen: Any, part: str, hole: Hole | None) -> Iterator[Outline]:
    if hole:
        words = _named(part, dimensions.hole(hole))
        whole = hole.diameter if hole.shape == "round" else hole.width
        yield Outline(pen, part, words, measure(whole), measure(hole.height), hole.shape == "round")


def _block(pen: Any, part: str, start: float, size: Quantity | Blank | None, height: float | None = None, *, before: bool = False) -> Iterator[Block]:  # fmt: skip
    """A part with a size along the axis, behind `start` or before it; nothing where that is not known."""
    if isinstance(size, Quantity) and size.value > 0:
        deep = size.value
        ends = (start - deep, start) if before else (start, start + deep)
        yield Block(pen, part, _named(part, size), *ends, height)


def _receiver(facts: ReceiverGear) -> _Parts:
    body, depth = facts.body, _mm(facts.chassis_depth)
    high = _mm(body.height) if body else None
    side = [*_block("outline", "chassis", 0, facts.chassis_depth, high), *_block("hidden", "plugs", depth or 0, facts.plug_room)]  # fmt: skip
    return [*_face("outline", "trim", facts.trim), *_face("hidden", "body", body)], side, None


def _kit(facts: KitGear) -> _Parts:
    return [*_face("outline", "opening", facts.opening)], [], None


def _speaker(facts: SpeakerGear) -> _Parts:
    front = [*_hole("outline", "flange", facts.flange), *_hole("hidden", "basket", facts.basket)]
    basket = _mm(facts.basket.diameter or facts.basket.height) if facts.basket else None
    side = [
        *_block("thin", "protrusion", 0, facts.protrusion, basket, before=True),
        *_block("outline", "depth", 0, facts.depth, _mm(facts.magnet) or basket),
    ]
    return front, side, facts.bolts


def _spacer(facts: SpacerGear) -> _Parts:
    front = [*_hole("outline", "flange", facts.flange), *_hole("hidden", "hole", facts.hole)]
    return front, [*_block("outline", "thickness", 0, facts.thickness)], facts.bolts


def _tweeter(facts: TweeterGear) -> _Parts:
    mount = next(iter(facts.mounts), None)
    if mount is None:
        return [], [], None
    whole = mount.diameter
    front = [Outline("outline", "mount", _named("mount", whole), measure(whole), measure(whole), round=True)] if isinstance(whole, Quantity) else []  # fmt: skip
    return front, [*_block("outline", "depth", 0, mount.depth, _mm(whole)), *_block("thin", "over", 0, mount.over, _mm(whole), before=True)], None  # fmt: skip


def _box(box: Any, bolts: Bolts | None) -> _Parts:
    """From above and from the side, as it lies."""
    if box is None:
        return [], [], None
    words = _named("top", message("dimensions/face", width=box.width, height=box.depth))
    top = [Outline("outline", "top", words, measure(box.width), measure(box.depth))]
    return top, [*_block("outline", "width", 0, box.width, _mm(box.height))], bolts


SKETCHES: Mapping[type, Callable[[Any], _Parts]] = {
    AmplifierGear: lambda facts: _box(facts.size, facts.bolts),
    CrossoverGear: lambda facts: _box(facts.box, None),
    KitGear: _kit,
    ReceiverGear: _receiver,
    SpacerGear: _spacer,
    SpeakerGear: _speaker,
    TweeterGear: _tweeter,
}
"""The parts that are drawn from the front and from the side, and the bolt holes, by kind of gear."""
