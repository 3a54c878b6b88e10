"""The voltage lost on the way to the load and back: U = I x (R out + R back)."""

from dataclasses import dataclass
from typing import Literal

from undertrim.derive.electrical import metals
from undertrim.derive.electrical.bounds import given, or_usual, usual
from undertrim.derive.electrical.conductors import Size, size
from undertrim.derive.electrical.numbers import Amount, Number, number
from undertrim.resources import table
from undertrim.words import Message, message

Back = float | Literal["body"] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """The way of a current in A: `out` in m; `back` in m of the same cable, "body", or None for a wire as long as `out`.

    What is None is usual: `voltage` in V, `conductor` in °C, `body` the resistance of the way through the body in ohm,
    `times` the resistance of the metal against copper.
    """

    current: float
    out: float
    back: Back = None
    metal: str = metals.COPPER
    times: float | None = None
    body: float | None = None
    voltage: float | None = None
    conductor: float | None = None


@dataclass(frozen=True, slots=True)
class Circuit:
    """A path as numbers, each within its bounds. Either `back` or `body` is None."""

    current: Number
    out: Number
    back: Number | None
    body: Number | None
    voltage: Number
    conductor: Number
    times: Number

    @property
    def numbers(self) -> tuple[Number, ...]:
        """All of it that was used."""
        ways = (self.out, self.back or self.body)
        every = (self.current, *ways, self.voltage, self.conductor, self.times if self.times.value != 1 else None)
        return tuple(one for one in every if one)

    def lost(self, conductor: Size, celsius: float) -> float:
        """The drop in V with a cable at a temperature."""
        per_metre = metals.resistance(conductor, celsius, self.times.value)
        metres = self.out.value + (self.back.value if self.back else 0.0)
        return self.current.value * (metres * per_metre + (self.body.value if self.body else 0.0))


@dataclass(frozen=True, slots=True)
class Drop:
    """The drop in V, as a share of the voltage, and in V with the conductor warm from use."""

    volts: float
    share: float
    warm: float
    resistance: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def circuit(path: Path) -> Circuit:
    """A path with its usual values. Raises Refused."""
    return Circuit(
        current=given("current", path.current),
        out=given("length", path.out, message("electrical/length-out")),
        back=_wire_back(path),
        body=_body(path) if path.back == "body" else None,
        voltage=or_usual("voltage", path.voltage, "voltage"),
        conductor=or_usual("conductor", path.conductor, "conductor"),
        times=metals.factor(path.metal, path.times),
    )


def drop(path: Path, scheme: str, name: str) -> Drop:
    """The drop along a path with a cable of one size. Raises Refused."""
    return dropped(circuit(path), size(scheme, name))


def dropped(made: Circuit, conductor: Size) -> Drop:
    """The drop of a circuit with a cable."""
    volts, warm = made.lost(conductor, made.conductor.value), made.lost(conductor, usual("warm"))
    share = volts / made.voltage.value
    per_metre = metals.resistance(conductor, made.conductor.value, made.times.value)
    found = (
        number(message("electrical/area"), conductor.area, "mm2", conductor.origin),
        number(message("electrical/resistance"), per_metre, "ohm/m", conductor.origin),
        number(message("electrical/drop"), volts, "V"),
        number(message("electrical/drop-share"), share, "share"),
        number(message("electrical/drop-warm", at=Amount(usual("warm"), "degC")), warm, "V"),
    )
    headline = message(
        "electrical/drop-along",
        size=conductor.label,
        lost=found[2].text,
        share=found[3].text,
        voltage=made.voltage.text,
        way=way(made),
    )
    return Drop(volts, share, warm, per_metre, headline, (*made.numbers, *found), notes(made))


def way(made: Circuit) -> Message:
    """The way there and back."""
    if made.back:
        return message("electrical/way-by-wire", out=made.out.text, back=made.back.text)
    return message("electrical/way-by-body", out=made.out.text)


def notes(made: Circuit) -> tuple[Message, ...]:
    """What is assumed of the way back and of the metal."""
    found = []
    if made.body and made.body.origin == "usual":
        found.append(message("electrical/body-assumed", resistance=made.body.text))
    if made.times.value != 1 and made.times.origin == "usual":
        found.append(message("electrical/clad-assumed", times=made.times.text))
    return tuple(found)


def _wire_back(path: Path) -> Number | None:
    if path.back == "body":
        return None
    label = message("electrical/length-back")
    if path.back is None:
        return given("length", path.out, label, "usual")
    return given("length", path.back, label)


def _body(path: Path) -> Number:
    if path.body is not None:
        return given("body", path.body)
    return given("body", float(table("electrical-cable")["body"]["resistance"]), "", "usual")
