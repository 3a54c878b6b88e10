"""Sizes of cable in three schemes: AWG, SAE and metric, each with its area and what it resists."""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from undertrim.derive.electrical.bounds import Refused
from undertrim.resources import table
from undertrim.words import Items, Message, Word, message, word

SCHEMES = ("awg", "sae", "metric")
_THINNEST = 40
_CIRCULAR_MIL = math.pi / 4 * 0.0254**2  # mm2


@dataclass(frozen=True, slots=True)
class Size:
    """One size: `area` in mm2, `resistance` of copper in ohm/m at 20 °C, `gauge` its row in the table of ampacity, or ""."""

    scheme: str
    name: str
    label: Message
    area: float
    resistance: float
    gauge: str
    origin: Word


def size(scheme: str, name: str) -> Size:
    """A size by its name: any gauge from 40 to 4/0 for "awg", a listed one for "sae" and "metric". Raises Refused."""
    if scheme == "awg" and (gauge := _gauge_number(name)) is not None:
        return _awg(name, gauge)
    found = next((one for one in sizes(scheme) if one.name == name), None)
    if found is None:
        known = Items(tuple(one.name for one in sizes(scheme)), "comma")
        raise Refused(message("electrical/no-size", scheme=scheme_word(scheme), name=name, known=known))
    return found


@cache
def sizes(scheme: str) -> Sequence[Size]:
    """What is offered in a scheme, from thin to thick. Raises Refused for an unknown scheme."""
    if scheme not in SCHEMES:
        raise Refused(message("electrical/no-scheme", scheme=scheme, known=Items(SCHEMES, "comma")))
    rows = table("electrical-cable")[scheme]["sizes"]
    if scheme == "awg":
        return tuple(size("awg", name) for name in rows)
    if scheme == "sae":
        return tuple(_sae(row["name"], row["cmil"]) for row in rows)
    return tuple(_metric(row["name"], row["ohm_per_km"]) for row in rows)


def scheme_word(scheme: str) -> Message:
    """A scheme as it stands before "cable"."""
    return message(f"electrical/scheme-{scheme}")


def diameter(gauge: int) -> float:
    """Of a gauge number, in mm: 0.127 x 92^((36-n)/39), ASTM B258; 0 is 1/0 and -3 is 4/0."""
    return 0.127 * math.pow(92, (36 - gauge) / 39)


def _awg(name: str, gauge: int) -> Size:
    area = math.pi / 4 * diameter(gauge) ** 2
    return Size(
        "awg", name, message("electrical/size-awg", name=name), area, _solid(area), _listed(name), _origin("awg")
    )


def _sae(name: str, cmil: float) -> Size:
    area = cmil * _CIRCULAR_MIL
    return Size(
        "sae", name, message("electrical/size-sae", name=name), area, _solid(area), _listed(name), _origin("sae")
    )


def _metric(name: str, ohm_per_km: float) -> Size:
    area = float(name)
    label = message("electrical/size-metric", area=area)
    return Size("metric", name, label, area, ohm_per_km / 1000, _next_smaller(area), _origin("metric"))


def _solid(area: float) -> float:
    return float(table("electrical-cable")["copper"]["resistivity"]) / area


def _origin(scheme: str) -> Word:
    return word("electrical-cable", scheme, "origin")


def _listed(name: str) -> str:
    return name if name in table("electrical-ampacity")["gauges"] else ""


def _next_smaller(area: float) -> str:
    """The thickest gauge in the table of ampacity with no more copper, or ""."""
    gauges = [size("awg", name) for name in table("electrical-ampacity")["gauges"]]
    return max(((one.area, one.name) for one in gauges if one.area <= area), default=(0.0, ""))[1]


def _gauge_number(name: str) -> int | None:
    """ "12" is 12, "1/0" is 0 and "4/0" is -3; None for anything else."""
    if name in ("1/0", "2/0", "3/0", "4/0"):
        return 1 - int(name[0])
    return int(name) if re.fullmatch("[1-9][0-9]?", name) and int(name) <= _THINNEST else None
