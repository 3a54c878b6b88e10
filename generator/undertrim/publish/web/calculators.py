"""The page of electrical calculators. Its script computes; tables and usual values reach it as JSON from the same data files."""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

from markupsafe import Markup

from undertrim.derive.electrical.conductors import SCHEMES, sizes
from undertrim.derive.electrical.fuses import colour_word, fuses
from undertrim.derive.electrical.numbers import Amount
from undertrim.publish.encoding import compact
from undertrim.publish.facts.electrical_tables import tables, worded_table
from undertrim.publish.web.pages import environment
from undertrim.record.unit_table import kinds
from undertrim.resources import table
from undertrim.words import message, once_per_language, say

STYLES = ("assets/undertrim/calculators.css",)
_TO_SI = {"length": Fraction(1, 1000), "share": Fraction(1, 100)}
_OFFERED: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "run": ("length", ("m", "ft")),
    "distance": ("length", ("m", "cm", "in")),
    "current": ("current", ("A", "mA")),
    "rest": ("current", ("mA", "A")),
    "power": ("power", ("W",)),
    "voltage": ("voltage", ("V",)),
    "corner": ("frequency", ("kHz", "Hz")),
    "resistance": ("resistance", ("ohm",)),
    "path": ("resistance", ("mohm",)),
    "share": ("share", ("%",)),
    "temperature": ("temperature", ("degC", "degF")),
    "charge": ("charge", ("Ah",)),
}
_CORNERS = (("frequency", "Hz"), ("frequency", "kHz"), ("capacitance", "uF"), ("inductance", "mH"))


def title() -> str:
    """The title of the page."""
    return say(message("calculators/title"))


@once_per_language
def page() -> str:
    """The body of the page in the language of the reader; whoever places it adds the script `calculators` and STYLES."""
    return (
        environment()
        .get_template("calculators.html.j2")
        .render(
            tables=_embedded(tables()),
            units={name: [_unit(kind, unit) for unit in chosen] for name, (kind, chosen) in _OFFERED.items()},
            corners=[{**_unit(kind, unit), "kind": kind} for kind, unit in _CORNERS],
            usual=_usual(),
            ampacity=worded_table("electrical-ampacity"),
            cables=[one for scheme in SCHEMES for one in sizes(scheme)],
            families=_families(),
            colours=[(colour, say(colour_word(colour))) for colour in _colours()],
            insulations=[(bears, _said(bears, "degC")) for bears in table("electrical-ampacity")["insulation"]],
            said=_said,
            words=say,
            colour_word=colour_word,
        )
    )


def _said(value: float, unit: str) -> str:
    return say(Amount(value, unit))


def _colours() -> Sequence[str]:
    return list(dict.fromkeys(fuse.colour for fuse in fuses() if fuse.colour))


def _unit(kind: str, name: str) -> dict[str, Any]:
    """How a typed number becomes SI: number x scale + offset."""
    unit, to_si = kinds()[kind].units[name], _TO_SI.get(kind, Fraction(1))
    return {"symbol": unit.symbol, "scale": float(unit.factor * to_si), "offset": float(unit.offset * to_si)}


def _usual() -> dict[str, str]:
    """The usual values in words, for fields that may stay empty."""
    units = {"voltage": "V", "efficiency": "share", "limit": "share", "conductor": "degC", "air": "degC"}
    others = {"rest_share": "share", "least_load": "ohm", "insulation": "degC"}
    values = table("electrical-defaults")["usual"]
    return {
        **{name: _said(values[name], unit) for name, unit in (units | others).items()},
        "body": _said(table("electrical-cable")["body"]["resistance"], "ohm"),
        "share": _said(table("electrical-fuses")["load"]["share"], "share"),
    }


def _families() -> Sequence[Mapping[str, Any]]:
    return [
        {"title": family["title"], "fuses": [fuse for fuse in fuses() if fuse.family == name]}
        for name, family in worded_table("electrical-fuses")["families"].items()
    ]


def _embedded(data: Mapping[str, Any]) -> Markup:
    """JSON that cannot close its script element."""
    text = compact(data)
    return Markup(text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026"))  # noqa: S704
