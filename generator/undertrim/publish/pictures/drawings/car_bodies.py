"""Where things are along a car of each body, for a sketch seen from above: stations in drawing units from the front.

Common practice, no source: these are no car's measures. A sketch shows what is before and beside what, and nothing can be measured on it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

Tail: TypeAlias = Literal["hatch", "deck", "bed", "box"]


@dataclass(frozen=True, slots=True)
class Stations:
    """Half the width, the length, and where things begin behind the front bumper.

    `nose` and `end` are how far the corners reach in. `cowl` is the foot of the windscreen, `dash` the face of the dash, `seat` the front
    edge of the front seats, `door` where a front door ends where another one follows, and `long_door` where none does; `rear` is the end of
    the rear doors and of the cabin, `bench` the first of the rows of seats behind, `load` what is behind all of them.
    """

    half: float
    length: float
    nose: float
    end: float
    cowl: float
    dash: float
    seat: float
    door: float
    long_door: float
    rear: float
    rows: tuple[float, ...]
    load: tuple[float, float]
    tail: Tail
    usual_doors: Literal["two", "four"] = "two"
    open_roof: bool = False
    spare: bool = False


BODIES: Mapping[str, Stations] = {
    "hatchback": Stations(56, 226, 30, 18, 62, 84, 100, 136, 150, 180, (148,), (186, 218), "hatch"),
    "saloon": Stations(56, 244, 30, 26, 64, 86, 102, 138, 152, 184, (150,), (204, 236), "deck", "four"),
    "estate": Stations(56, 244, 30, 14, 64, 86, 102, 138, 152, 184, (150,), (190, 236), "hatch", "four"),
    "coupe": Stations(56, 232, 34, 24, 68, 90, 106, 142, 160, 188, (156,), (200, 224), "deck"),
    "convertible": Stations(56, 232, 34, 24, 68, 90, 106, 142, 160, 188, (156,), (200, 224), "deck", open_roof=True),
    "pick-up": Stations(58, 262, 26, 8, 60, 82, 96, 130, 136, 168, (138,), (176, 254), "bed"),
    "van": Stations(60, 262, 20, 6, 30, 56, 70, 106, 110, 106, (), (120, 254), "box"),
    "minibus": Stations(60, 262, 20, 6, 30, 56, 70, 106, 110, 176, (122, 158, 194), (232, 254), "box"),
    "off-road": Stations(58, 232, 18, 10, 60, 82, 98, 134, 148, 178, (146,), (186, 222), "hatch", "four", spare=True),
}
"""By the words of the schema; one of them has a place for every body that a record may name."""

PLAIN = BODIES["hatchback"]
"""For a record that names no body."""
