"""What lies along the axis of a speaker: positions in mm behind the face that depths are counted from, as far as known."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.words import Message, Value, message

Verdict: TypeAlias = Literal["fits", "close", "too close", "strikes", "unknown"]
Datum: TypeAlias = Literal["skin", "bracket", "other"]


# what is said where nothing has a name of its own
_DATUM_NAME = message("drawings/door-skin")
_BEHIND = message("drawings/first-behind")
_FRONT = message("drawings/grille")
_SPACER_NAME = message("drawings/spacer")
_NEAR = message("drawings/cabin-side")
_FAR = message("drawings/outside")


@dataclass(frozen=True, slots=True)
class Margin:
    """A verdict with its reason in words, such as "2 mm (0.08 in) to spare"."""

    text: Value
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Speaker:
    """A speaker from the side; `depth` goes from the underside of its flange, `protrusion` the other way at full travel."""

    name: Value
    depth: Measure = UNKNOWN
    protrusion: Measure = UNKNOWN
    flange: Measure = UNKNOWN
    basket: Measure = UNKNOWN
    magnet: Measure = UNKNOWN


@dataclass(frozen=True, slots=True)
class Section:
    """An opening cut along the axis of its speaker. All `Measure`s in mm; None stands for what is not there, `Measure()` for what is not recorded.

    `clear` (at the axis) and `room` count from the datum: the bare skin, the face of the factory bracket, or another face, against
    which nothing can be placed. `lean` is the angle in degrees between the thing behind and the mounting face: without one there is
    none, unless `lean_text` says that it is not known. `bracket` is the factory bracket; it is drawn where it stays
    (`bracket_stays`). `more` are sentences to stand below, such as what is not drawn.
    """

    title: Value
    clear: Measure = UNKNOWN
    room: Measure = UNKNOWN
    hole: Measure = UNKNOWN
    datum: Datum = "skin"
    datum_name: Value = _DATUM_NAME
    behind: Value = _BEHIND
    front: Value = _FRONT
    lean: float | None = None
    lean_text: Value = ""
    bracket: Measure | None = None
    bracket_stays: bool = False
    spacer: Measure | None = None
    spacer_name: Value = _SPACER_NAME
    gasket: Measure | None = None
    speaker: Speaker | None = None
    margin_behind: Margin | None = None
    margin_front: Margin | None = None
    near: Value = _NEAR
    far: Value = _FAR
    more: tuple[Value, ...] = ()

    @property
    def slope(self) -> float | None:
        """By how much the thing behind comes nearer over the distance from the axis; None where that is not known."""
        if self.lean is None and self.lean_text:
            return None
        return math.tan(math.radians(self.lean or 0))


@dataclass(frozen=True, slots=True)
class Ring:
    """A ring between mounting face and flange, `top` being nearer to the cabin."""

    part: str
    name: Value
    text: Value
    bottom: float
    top: float


@dataclass(frozen=True, slots=True)
class Axis:
    """Positions in mm, larger further away from the cabin; None where one is not known. `lost` is what is not."""

    skin: float | None
    clear: float | None
    room: float | None
    rings: tuple[Ring, ...] = ()
    seat: float | None = None
    back: float | None = None
    cone: float | None = None
    slope: float | None = 0
    lost: tuple[Message, ...] = ()

    def behind(self, radius: float) -> float | None:
        """Where the thing behind is at a distance from the axis, on the side where it leans nearer; mm. None where that is not known."""
        if self.clear is None or not radius:
            return self.clear
        return None if self.slope is None else self.clear - self.slope * radius

    @property
    def known(self) -> list[float]:
        """Every position that can be drawn, the datum among them."""
        places = (0.0, self.skin, self.clear, self.room, self.seat, self.back, self.cone)
        rings = (place for ring in self.rings for place in (ring.bottom, ring.top))
        return [place for place in (*places, *rings) if place is not None]


def axis(section: Section) -> Axis:
    """The positions. Where the height of one ring is not known, what sits on it has none."""
    skin, seat = _faces(section)
    rings: list[Ring] = []
    if section.bracket is not None and section.bracket_stays and section.datum != "other":
        rings += _bracket(section.bracket, skin)
    for part, name, measure in _stacked(section):
        top = _less(seat, measure.mm)
        if seat is not None and top is not None:
            rings.append(Ring(part, name, measure.text, seat, top))
        seat = top
    speaker = section.speaker
    return Axis(
        skin=skin,
        clear=section.clear.mm,
        room=_less(0, section.room.mm),
        rings=tuple(rings),
        seat=seat if speaker else None,
        back=_less(seat, None if speaker is None or speaker.depth.mm is None else -speaker.depth.mm),
        cone=_less(seat, speaker.protrusion.mm if speaker else None),
        slope=section.slope,
        lost=tuple(_lost(section, seat)),
    )


def _faces(section: Section) -> tuple[float | None, float | None]:
    """Where the bare skin is, and where the first ring or the flange sits."""
    height = section.bracket.mm if section.bracket else None
    if section.datum == "skin":
        return 0.0, _less(0, height) if section.bracket_stays else 0.0
    if section.datum == "bracket":
        skin = 0.0 if section.bracket is None else height
        return skin, 0.0 if section.bracket_stays else skin
    return None, None


def _bracket(measure: Measure, skin: float | None) -> Iterator[Ring]:
    top = _less(skin, measure.mm)
    if skin is not None and top is not None:
        yield Ring("bracket", message("drawings/factory-bracket"), measure.text, skin, top)


def _stacked(section: Section) -> Iterator[tuple[str, Value, Measure]]:
    if section.spacer is not None:
        yield "spacer", section.spacer_name, section.spacer
    if section.gasket is not None and section.speaker is not None:
        yield "gasket", message("drawings/gasket"), section.gasket


def _less(place: float | None, height: float | None) -> float | None:
    return None if place is None or height is None else place - height


def _lost(section: Section, seat: float | None) -> Iterator[Message]:
    """What is left out, with how it is not known."""
    for name, measure in (*_of_opening(section), *_of_speaker(section)):
        if measure is not None and measure.mm is None:
            yield message("drawings/is", what=name, how=measure.text)
    if section.slope is None:
        yield message("drawings/lean-unknown", behind=section.behind, lean=section.lean_text)
    if section.datum == "other":
        yield message("drawings/face-unknown", datum=section.datum_name)
    if section.speaker and seat is None:
        yield message("drawings/seat-unknown", speaker=section.speaker.name)


def _of_opening(section: Section) -> Iterator[tuple[Message, Measure | None]]:
    """What should be known of the opening and what goes between, with what is."""
    yield message("fit/clear-depth"), section.clear
    yield message("drawings/room-to", front=section.front), section.room
    yield message("fit-speaker/hole"), section.hole
    yield message("drawings/height-of-bracket"), section.bracket
    yield message("drawings/height-of", ring=section.spacer_name), section.spacer


def _of_speaker(section: Section) -> Iterator[tuple[Message, Measure | None]]:
    """The same of the speaker."""
    if speaker := section.speaker:
        yield message("drawings/gasket"), section.gasket
        yield message("fit-speaker/mounting-depth"), speaker.depth
        yield message("fit-speaker/protrusion"), speaker.protrusion
        yield message("fit-speaker/flange"), speaker.flange
        yield message("fit-speaker/basket"), speaker.basket
        yield message("drawings/magnet"), speaker.magnet
