"""A tweeter's place on the page."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.tweeter.mounted import goes_here
from undertrim.derive.fit.margins import NOT_RECORDED
from undertrim.derive.fit.stock import Gear, only
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import gear_lines, measures, words
from undertrim.publish.facts.drawn_margins import to_get
from undertrim.publish.facts.loads import Load, loads
from undertrim.publish.facts.rows import Row
from undertrim.publish.pictures.drawings.rings import Part, Ring, Rings
from undertrim.record.model import Blank, Hole
from undertrim.record.model.kinds.tweeter import CrossoverGear, CrossoverPlace, TweeterGear, TweeterOpening
from undertrim.record.units import Quantity
from undertrim.words import Items, Value, message

SIZES: dict[type, tuple[str, ...]] = {
    TweeterGear: ("mounts", "impedance", "high_pass", "comes_with"),
    CrossoverGear: ("box", "impedance", "frequency", "filter_order"),
}
"""The fields that the scripts reckon with, by kind of gear."""


def said(facts: TweeterGear) -> Iterator[Value]:
    """What a card of a tweeter says: what must keep low tones away from it, and what is in the box."""
    yield from gear_lines.known_as(facts.nominal)
    if needed := facts.high_pass:
        said = {"corner": words.quantity(needed.frequency), "power": words.quantity(needed.power)}
        yield message("gear-card/high-pass", order=message(f"filter-orders/{needed.filter_order}"), **said)
    if facts.comes_with:
        things = tuple(message(f"gear-card/with-{thing}") for thing in facts.comes_with)
        yield message("gear-card/comes-with", things=Items(things, "comma"))


def said_of_crossover(facts: CrossoverGear) -> Iterator[Value]:
    """What a card of a crossover says: where and how steeply it parts high from low, for which load, how large it is, and its pads."""
    corner, load = words.quantity(facts.frequency), words.quantity(facts.impedance)
    order = message(f"filter-orders/{facts.filter_order}")
    yield message("gear-card/parts-at", corner=corner, order=order, load=load)
    if facts.box:
        sides = {name: words.quantity(getattr(facts.box, name)) for name in ("width", "height", "depth")}
        yield message("gear-card/box", **sides)
    if facts.pads:
        yield message("gear-card/pads", pads=Items(facts.pads, "comma"))


CARDS: dict[type, Callable[[Any], Iterator[Value]]] = {TweeterGear: said, CrossoverGear: said_of_crossover}
"""What a card says, by kind of gear."""


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a tweeter."""

    opening: TweeterOpening

    @property
    def outline(self) -> Hole | None:
        """Its cut-out, else its cup, else the flat face."""
        cup = self.opening.cup
        told = (self.opening.cut_out, cup.diameter if cup else None, self.opening.flat)
        return next((Hole("round", one) for one in told if isinstance(one, Quantity)), None)

    @property
    def form(self) -> tuple[str, ...]:
        """The fields of the opening that the scripts reckon with."""
        return ("mount", "cup", "cut_out", "flat", "depth", "room_in_front", "feed", "corner", "crossover_place")

    def outlines(self) -> Iterator[Row]:
        """How it is held, and in what."""
        opening, cup = self.opening, self.opening.cup
        place = message(f"tweeter-shown/place-{opening.place}") if opening.place else ""
        yield "mount", message("fit-tweeter/mount"), message(f"tweeter-shown/mount-{opening.mount}")
        yield "place", message("tweeter-shown/place"), place
        yield "angle", message("tweeter-shown/angle"), words.quantity(opening.angle)
        yield "cut_out", message("tweeter-shown/cut-out"), words.quantity(opening.cut_out)
        if cup:
            sizes = {"diameter": words.quantity(cup.diameter), "depth": words.quantity(cup.depth)}
            yield "cup", message("tweeter-shown/cup"), message("tweeter-shown/cup-sizes", **sizes)
        yield "flat", message("tweeter-shown/flat"), words.quantity(opening.flat)

    def more(self) -> Iterator[Row]:
        """What stands before it, how it is fed, where a crossover goes, and what is there today."""
        opening = self.opening
        channel = message(f"channels/{opening.channel}") if opening.channel else NOT_RECORDED
        place = _place(opening.crossover_place) if opening.crossover_place else ""
        factory = message(f"tweeter-shown/factory-{opening.factory or 'unknown'}")
        yield "room_in_front", message("tweeter-shown/front"), self._front()
        yield "feed", message("tweeter-shown/feed"), message(f"tweeter-shown/feed-{opening.feed}")
        yield "channel", message("speaker-shown/channel"), channel
        yield "corner", message("tweeter-shown/corner"), words.quantity(opening.corner)
        yield "crossover_place", message("tweeter-shown/crossover-place"), place
        yield "factory", message("tweeter-shown/factory"), factory
        yield "impedance", message("speaker-shown/impedance"), words.quantity(opening.impedance)

    def _front(self) -> Value:
        """The room before it; that nothing is before it where somebody looked."""
        if self.opening.room_in_front is Blank.NONE:
            return message("tweeter-shown/front-none")
        return words.quantity(self.opening.room_in_front) or NOT_RECORDED

    def loads(self, vehicle: Vehicle) -> Iterator[Load]:
        """What drives it and what is joined to it, in each kind of car."""
        return loads(vehicle, self.opening)

    def joining(self, vehicle: Vehicle) -> None:
        """Nothing: it takes the place of no factory unit that does more than sound."""

    def feeding(self, vehicle: Vehicle) -> None:
        """Nothing: no cable of its own feeds it."""

    def drawn(self, usual: Clearances, fit: Fit | None, gear: Gear | None, between: Gear | None) -> Mapping[str, Rings]:
        """From the front."""
        if not self.outline:
            return {}
        tweeter = only(gear, TweeterGear) if gear else None
        rings = (*self._of_car(), *(_of_gear(tweeter.name, tweeter.facts, self.opening) if tweeter else ()))
        code = "drawn-with" if tweeter else "drawn"
        title = message(f"tweeter-shown/{code}", opening=self.opening.name, gear=tweeter.name if tweeter else "")
        return {"rings": Rings(title, tuple(rings), tuple(to_get(fit)))}

    def _of_car(self) -> Iterator[Ring]:
        cup = self.opening.cup
        yield from _ring("cut-out", message("paper/cut-out-of-car"), self.opening.cut_out)
        yield from _ring("cup", message("paper/cup-of-car"), cup.diameter if cup else None)
        yield from _ring("flat", message("paper/flat-of-car"), self.opening.flat)


def _of_gear(name: str, facts: TweeterGear, opening: TweeterOpening) -> Iterator[Ring]:
    """The mount that would go here."""
    for mount in goes_here(facts, opening)[:1]:
        what = "drawings/body-of" if mount.mount == "flush" else "tweeter-shown/ring-foot"
        yield from _ring("body", message(what, gear=name), mount.diameter)
        yield from _ring("rim", message("paper/rim-of", gear=name), mount.rim)


def _ring(part: Part, what: Value, across: Quantity | Blank | None) -> Iterator[Ring]:
    """One outline, if it is measured."""
    if isinstance(across, Quantity):
        yield Ring(part, what, measures.measure(across))


def _place(place: CrossoverPlace) -> Value:
    sides = {name: words.quantity(getattr(place, name)) for name in ("width", "height", "depth")}
    return message("tweeter-shown/place-sizes", at=place.at, **sides)
