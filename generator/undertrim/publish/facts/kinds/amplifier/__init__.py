"""A place for an amplifier on the page."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Never

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.amplifier.turning import pose
from undertrim.derive.fit.margins import NOT_RECORDED
from undertrim.derive.fit.stock import Gear, only
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import gear_lines, measures, words
from undertrim.publish.facts.dimensions import face
from undertrim.publish.facts.kinds.amplifier.feeding import Feeding, feeding
from undertrim.publish.facts.rows import Row
from undertrim.publish.pictures.drawings.bay import Bay, Cuboid
from undertrim.record.model import Face
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening, Box
from undertrim.words import Value, message, one_of

SIZES: dict[type, tuple[str, ...]] = {
    AmplifierGear: (
        *("size", "cooling", "channels", "least_load", "bridged_load"),
        *("rated", "inputs", "wakes_by", "turn_on_draws"),
    )
}
"""The fields that the scripts reckon with."""


@dataclass(frozen=True, slots=True)
class Room:
    """A place for an amplifier."""

    opening: AmplifierOpening

    @property
    def outline(self) -> Face | None:
        """Its floor, from above."""
        space = self.opening.space
        return Face(space.width, space.depth) if space else None

    @property
    def form(self) -> tuple[str, ...]:
        """The fields of the opening that the scripts reckon with."""
        return ("space", "way_in", "air", "ground_point", "fuse_place", "finds", "switched_on_by", "powers")

    def outlines(self) -> Iterator[Row]:
        """The box, the way to it and what it is fixed to."""
        at = self.opening
        if at.space:
            yield "space", message("amplifier-shown/space"), box(at.space)
        yield "way_in", message("amplifier-shown/way-in"), face(at.way_in) if at.way_in else NOT_RECORDED
        yield "surface", message("amplifier-shown/surface"), _one("surface", at.surface)
        yield "fixings", message("amplifier-shown/fixings"), _one("fixings", at.fixings)
        under = [message(f"amplifier-shown/under-{thing}") for thing in at.underneath or ("unknown",)]
        yield "underneath", message("amplifier-shown/underneath"), words.listed(*under)
        restraint = message(f"amplifier-shown/restraint-{at.restraint_near}")
        yield "restraint_near", message("amplifier-shown/restraint"), restraint
        yield "air", message("amplifier-shown/air"), _one("air", at.air)

    def more(self) -> Iterator[Row]:
        """Where fuse, ground and signal are; the run stands with the cable runs, and in what each amplifier wants."""
        at = self.opening
        yield "fuse_place", message("amplifier-shown/fuse"), self._fuse()
        yield "ground_point", message("amplifier-shown/ground"), self._ground()
        yield "finds", message("amplifier-shown/finds"), _finds(at.finds)
        powers = words.listed(*(message(f"channels/{name}") for name in at.powers))
        yield "switched_on_by", message("amplifier-shown/switched-on-by"), _one("switched-on-by", at.switched_on_by)
        yield "powers", message("amplifier-shown/powers"), powers
        if at.supply:
            yield "supply/alternator", message("amplifier-shown/alternator"), words.quantity(at.supply.alternator)
            yield "supply/battery", message("amplifier-shown/battery"), words.quantity(at.supply.battery)

    def _fuse(self) -> Value:
        place = self.opening.fuse_place
        if place is None:
            return NOT_RECORDED
        far = words.quantity(place.from_battery) or NOT_RECORDED
        return message("amplifier-shown/fuse-at", at=place.at, far=far)

    def _ground(self) -> Value:
        point = self.opening.ground_point
        if point is None:
            return NOT_RECORDED
        nut = message("amplifier-shown/nut", drive=point.nut) if point.nut else ""
        paint, length = message(f"amplifier-shown/paint-{point.paint or 'unknown'}"), words.quantity(point.length)
        return words.listed(point.at, paint, nut, message("amplifier-shown/cable", length=length) if length else "")

    def loads(self, vehicle: Vehicle) -> Iterator[Never]:
        """Nothing: an amplifier drives and is not driven."""
        return iter(())

    def joining(self, vehicle: Vehicle) -> None:
        """Nothing: it takes the place of no factory unit that does more than sound."""

    def feeding(self, vehicle: Vehicle) -> Feeding:
        """What feeds it, what it hears and drives."""
        return feeding(vehicle, self.opening)

    def drawn(self, usual: Clearances, fit: Fit | None, gear: Gear | None, between: Gear | None) -> Mapping[str, Bay]:
        """The box, from above and from the front, with the amplifier as it is turned."""
        if not self.opening.space:
            return {}
        title = (
            message("drawn-fit/dash-with", opening=self.opening.name, gear=gear.name)
            if gear
            else message("amplifier-shown/drawn", opening=self.opening.name)
        )
        size = only(gear, AmplifierGear).facts.size if gear else None
        turned = cuboid(size, pose(fit).order) if size and fit else None
        return {"bay": Bay(title, cuboid(self.opening.space), gear.name if gear else "", turned)}


def said(facts: AmplifierGear) -> Iterator[Value]:
    """What a card of an amplifier says of its outputs, its feed and what wakes it."""
    yield from gear_lines.least_load(facts.least_load)
    yield message("amplifier-shown/channels", count=facts.channels)
    if facts.rated:
        yield message("amplifier-shown/power", power=words.quantity(facts.rated.power))
        if facts.rated.efficiency is not None:
            yield message("amplifier-shown/efficiency", efficiency=words.quantity(facts.rated.efficiency))
    if facts.bridged_load is not None:
        yield message("amplifier-shown/bridged", load=words.quantity(facts.bridged_load))
    if facts.own_fuse is not None:
        yield message("amplifier-shown/own-fuse", fuse=words.quantity(facts.own_fuse))
    yield message("amplifier-shown/inputs", inputs=one_of(*(message(f"levels/{level}") for level in facts.inputs)))
    yield message(
        "amplifier-shown/wakes-by", ways=one_of(*(message(f"amplifier-shown/by-{way}") for way in facts.wakes_by))
    )
    if facts.turn_on_draws is not None:
        yield message("amplifier-shown/turn-on-draws", current=words.quantity(facts.turn_on_draws))


CARDS: dict[type, Callable[[Any], Iterator[Value]]] = {AmplifierGear: said}
"""What a card says, by kind of gear."""


def box(item: Box) -> Value:
    """A box by its three sides."""
    sides = {side: words.quantity(getattr(item, side)) for side in ("width", "height", "depth")}
    return message("amplifier-shown/box", **sides)


def cuboid(item: Box, order: tuple[int, int, int] = (0, 1, 2)) -> Cuboid:
    """A box as the drawings take it, turned so that its sides stand in this order."""
    sides = (item.width, item.height, item.depth)
    return Cuboid(*(measures.measure(sides[place]) for place in order))


def _finds(level: str) -> Value:
    """The signal at the place; empty where it is what the radio sends."""
    if level in ("", "none", "unknown"):
        return _one("finds", level) if level else ""
    return message(f"levels/{level}")


def _one(field: str, value: str) -> Value:
    return message(f"amplifier-shown/{field}-{value}") if value else NOT_RECORDED
