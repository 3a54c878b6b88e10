"""How a tweeter is mounted and what is measured of its place go together.

## What it finds

An `angled` place without its `angle`, an `angle` at a place that is flush or on a face, a flush place without `cut_out` or `cup`, a
surface place without its `flat` face, and a `place` that is not in the `area`: a mirror corner is in a door.

## Why it matters

Only the sizes that belong to the mount are reckoned with. A tweeter that is held against the wrong one fits on paper and not in the
car; and by its area the tech is warned of airbags and sensors.

## Bad

    openings:
      sail:
        name: Mirror corners
        kind: tweeter
        area: pillar
        behind: [radio]
        mount: flush
        place: sail    # here
        cut_out: 44 mm
        depth: {clear: 24 mm, datum: panel}
        angle: 20 deg    # here
        feed: crossover
      dash:
        name: Corners of the dash
        kind: tweeter
        area: dash
        behind: [radio]
        mount: angled    # here
        cup: {diameter: 44 mm, depth: 15 mm}
        feed: crossover
      pillar:
        name: Windscreen pillars
        kind: tweeter
        area: pillar
        behind: [radio]
        mount: surface    # here
        cut_out: 44 mm
        feed: crossover

warning: the place is 'sail', and the area 'pillar' (a mirror corner is in a door: correct one of the two)
warning: an angle of '20 deg' is that of an angled mount, and the mount is 'flush' (write 'mount: angled', or leave 'angle' out)
warning: the mount is 'angled', and its angle is not said (measure it, or write 'angle: unknown')
warning: the mount is 'surface', and nothing is said of what holds it (measure 'flat', or write 'unknown' there)

## Good

    openings:
      sail:
        name: Mirror corners
        kind: tweeter
        area: front-door
        behind: [radio]
        mount: angled
        place: sail
        cup: {diameter: 44 mm, depth: 15 mm}
        angle: unknown
        feed: crossover
      pillar:
        name: Windscreen pillars
        kind: tweeter
        area: pillar
        behind: [radio]
        mount: surface
        place: pillar
        flat: unknown
        feed: crossover
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.record.model.openings import DOORS
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import Message, message

LEVEL = Level.WARNING

_AREAS = {"sail": DOORS, "door": DOORS, "pillar": ("pillar",), "dash": ("dash",)}
_HOLDS = {
    "flush": (("cut_out", "cup"), message("rules/tweeter-mount-mismatch/nothing-flush")),
    "surface": (("flat",), message("rules/tweeter-mount-mismatch/nothing-surface")),
    "angled": (("cup", "flat"), message("rules/tweeter-mount-mismatch/nothing-angled")),
}
"""What a mount is held by: one of these is enough, and what is said where none is there."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every place whose mount, sizes and area contradict each other."""
    for opening in subject.record.openings_of(TweeterOpening):
        for field, found in (*_placed(opening), *_turned(opening), *_held(opening)):
            yield Finding(("openings", opening.id, field), found, about=(opening.area,) if field == "place" else ())


_Found = tuple[str, Message]


def _placed(opening: TweeterOpening) -> Iterator[_Found]:
    if opening.place and opening.area and opening.area not in _AREAS[opening.place]:
        facts = {"place": opening.place, "area": opening.area}
        if opening.place == "sail":
            yield "place", message("rules/tweeter-mount-mismatch/not-a-sail", **facts)
        else:
            yield "place", message("rules/tweeter-mount-mismatch/elsewhere", **facts)


def _turned(opening: TweeterOpening) -> Iterator[_Found]:
    mount, angle = opening.mount, opening.angle
    if mount == "angled" and angle is None:
        yield "mount", message("rules/tweeter-mount-mismatch/no-angle", mount=mount)
    if mount in ("flush", "surface") and isinstance(angle, Quantity):
        yield "angle", message("rules/tweeter-mount-mismatch/angle-for-nothing", angle=angle.text, mount=mount)


def _held(opening: TweeterOpening) -> Iterator[_Found]:
    names, said = _HOLDS.get(opening.mount, ((), None))
    if said and all(getattr(opening, name) is None for name in names):
        yield "mount", message(said.code, mount=opening.mount)
