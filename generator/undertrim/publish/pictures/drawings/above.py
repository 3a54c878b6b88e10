"""The car from above with what is worked at: a mark beside the car for each job, with a line to its place."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from undertrim.publish.pictures.drawings import car_signs, columns, lettering, svg
from undertrim.publish.pictures.drawings.car import Box, Shape, middle, part_of, point, rounded
from undertrim.publish.pictures.drawings.lettering import Line

WIDTH = 340
"""Of the whole, in drawing units: px on a phone."""
MIDDLE, TOP = WIDTH / 2, 20.0
"""Where the front of the car is."""
CHIP = (48.0, 42.0)
"""A mark is as large as a gloved finger needs it."""
_APART = CHIP[1] + 4
CHIP_LETTERS = 15.0
"""How high the letters of a mark are."""
_RING = 4.0


@dataclass(frozen=True, slots=True)
class Seat:
    """An area, a side or none, and the cars for which it is there, as data."""

    area: str
    side: str
    clauses: Mapping[str, Sequence[str]]

    @property
    def key(self) -> str:
        """Its name in ids."""
        return f"{self.area}-{self.side}" if self.side else self.area


@dataclass(frozen=True, slots=True)
class Job:
    """A target with its mark, at one seat."""

    target: str
    mark: str
    seat: Seat


@dataclass(frozen=True, slots=True)
class Chip:
    """A mark with its middle, the spot that its line leads to, and the boxes of its place on the car."""

    job: Job
    at: svg.Point
    spot: svg.Point
    boxes: tuple[Box, ...]

    @property
    def path(self) -> str:
        """Outline of the mark, the line, and a ring around the spot."""
        (x, y), (to_x, to_y) = self.at, self.spot
        wide, high = CHIP
        case = rounded((x - wide / 2, y - high / 2, x + wide / 2, y + high / 2), 8)
        edge = x + (wide / 2 if to_x > x else -wide / 2)
        far = math.dist((edge, y), self.spot)
        end = point(to_x - _RING * (to_x - edge) / far, to_y - _RING * (to_y - y) / far)
        return f"{case} M{point(edge, y)} L{end} {svg.circle(*self.spot, _RING)}"

    def lettered(self, words: str) -> str:
        """Its words, as large as there is room for."""
        size = min(
            CHIP_LETTERS, CHIP_LETTERS * (CHIP[0] - 4) / (lettering.width(words) * CHIP_LETTERS / lettering.SIZE)
        )
        x, y = self.at
        small = {} if size == CHIP_LETTERS else {"font_size": size}
        return svg.element("text", svg.escaped(words), x=x, y=y + size * 0.36, **small)


@dataclass(frozen=True)
class Scene:
    """What is to be seen: the shape of the car, its jobs in their order, where batteries are, and the areas of each sign."""

    shape: Shape
    jobs: Sequence[Job]
    batteries: Sequence[Seat]
    fires: Sequence[str]
    unlooked: Sequence[str]
    high_voltage: Sequence[str]

    @cached_property
    def chips(self) -> tuple[Chip, ...]:
        """The marks in two columns, left and right; what has no side goes where there are fewer."""
        wanted = list(self._wanted())
        columns_ = {side: [chip for chip in wanted if chip.job.seat.side == side] for side in ("left", "right")}
        for chip in wanted:
            if not chip.job.seat.side:
                min(columns_["right"], columns_["left"], key=len).append(chip)
        placed: dict[int, Chip] = {}
        for x, column in zip(_COLUMNS, columns_.values(), strict=True):
            heights = columns.spread([chip.at[1] for chip in column], _APART, _LOWEST, self.bottom - CHIP[1] / 2)
            placed |= {wanted.index(chip): replace(chip, at=(x, y)) for chip, y in zip(column, heights, strict=True)}
        return tuple(placed[place] for place in sorted(placed))

    @property
    def bottom(self) -> float:
        """Where the car ends."""
        at = self.shape.stations
        return TOP + at.length + (9 if at.spare else 0)

    @property
    def end(self) -> float:
        """Where car and marks end."""
        return max([self.bottom, *(chip.at[1] + CHIP[1] / 2 for chip in self.chips)]) + 4

    def _wanted(self) -> Iterator[Chip]:
        """A mark for each job at the height of its spot."""
        sharing = [
            (job.seat.key, str(job.seat.clauses)) for job in self.jobs
        ]  # of forms for different cars no car has two
        for place, job in enumerate(self.jobs):
            boxes = self.shape.boxes(job.seat.area, job.seat.side)
            boxes = part_of(boxes, sharing[:place].count(sharing[place]), sharing.count(sharing[place]))
            if boxes:
                x, y = middle(boxes)
                yield Chip(job, (0, TOP + y), (MIDDLE + x, TOP + y), boxes)

    def signs(self) -> dict[str, str]:
        """The signs that there are, each sort as one path, in the units of the car."""
        found = {
            "battery": [car_signs.battery(*at) for seat in self.batteries for at in car_signs.posts(self.shape, seat.area, seat.side)],
            "fires": [car_signs.star(*at) for area in self.fires for at in car_signs.stars(self.shape, area)],
            "unlooked": [car_signs.star(*at) for area in self.unlooked for at in car_signs.stars(self.shape, area)],
            "voltage": [car_signs.flash(*at) for area in self.high_voltage for at in car_signs.flashes(self.shape, area)],
        }  # fmt: skip
        return {name: " ".join(paths) for name, paths in found.items() if paths}


_COLUMNS = CHIP[0] / 2 + 1, WIDTH - CHIP[0] / 2 - 1
_LOWEST = CHIP[1] / 2 + 2


SIGNS = {"battery": car_signs.battery, "fires": car_signs.star, "unlooked": car_signs.star, "voltage": car_signs.flash}
"""How each sort of sign is drawn."""


@dataclass(frozen=True, slots=True)
class Legend:
    """Lines of text below the picture, and a sign before each, by its sort; no sort is a plain line."""

    rows: tuple[tuple[str, str], ...]
    top: float

    def lines(self) -> tuple[list[Line], dict[str, str], float]:
        """The text, the signs as path texts by sort, and where it ends: side by side where they find room."""
        lines: list[Line] = []
        signs: dict[str, str] = {}
        x, y = 0.0, self.top + lettering.PITCH
        for sort, words in self.rows:
            before = _SIGN_ROOM if sort else 2.0
            long = before + lettering.width(words) + 6
            if x and x + long > WIDTH:
                x, y = 0.0, y + _ROW
            if sort:
                signs[sort] = (
                    SIGNS[sort](x + 13, y - 4) if sort in SIGNS else rounded((x + 4, y - 10, x + 22, y + 2), 2)
                )
            broken = lettering.wrapped(words, WIDTH - x - before - 2)
            lines += [Line(x + before, y + place * lettering.PITCH, part) for place, part in enumerate(broken)]
            y += (len(broken) - 1) * lettering.PITCH
            x += long if len(broken) == 1 else WIDTH
        return lines, signs, y + 6


_SIGN_ROOM, _ROW = 28.0, 18.0
