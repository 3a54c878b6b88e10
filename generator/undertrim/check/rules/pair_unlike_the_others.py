"""The two wires of a speaker are told apart like those of the other speakers.

## What it finds

In a plug where at least two pairs of speaker wires agree, one that differs from them: its stripe is on the other wire, or its two
wires have no ground colour in common. Also any pair whose two wires have one and the same colour. That makers keep to one way
within a plug is common practice, no source.

## Why it matters

One pair with plus and minus exchanged plays out of step with the others, and the bass is gone. Nobody sees it in a list of
twenty colours.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: front-left-plus, colour: white}
          2: {function: front-left-minus, colour: white/black}
          3: {function: front-right-plus, colour: grey}
          4: {function: front-right-minus, colour: grey/black}
          5: {function: rear-left-plus, colour: green/black}    # here
          6: {function: rear-left-minus, colour: green}
          7: {function: rear-right-plus, colour: violet}    # here
          8: {function: rear-right-minus, colour: blue/black}
      second:
        name: Plug of the amplifier
        view: wires
        rows: 1
        columns: 2
        pins:
          1: {function: bass-plus, colour: red}    # here
          2: {function: bass-minus, colour: red}

warning: of pins 5 and 6 the plus has the stripe, in the other pairs of this plug the minus (look at both wires again; if they are so, allow it with what you metered)
warning: pins 7 and 8 are 'violet' and 'blue/black', and the other pairs of this plug have one ground colour each (look at both wires again; if they are so, allow it with what you metered)
warning: pins 1 and 2 are plus and minus of one speaker and have one colour, 'red' (look at both wires again; if they are so, allow it with what you metered)

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: front-left-plus, colour: white}
          2: {function: front-left-minus, colour: white/black}
          3: {function: front-right-plus, colour: grey}
          4: {function: front-right-minus, colour: grey/black}
          5: {function: rear-left-plus, colour: green}
          6: {function: rear-left-minus, colour: green/black}
          7: {function: rear-right-plus}
          8: {function: rear-right-minus, colour: violet/black}
      second:
        name: Another way, and all of them keep to it
        view: wires
        rows: 1
        columns: 4
        pins:
          1: {function: bass-plus, colour: red/white}
          2: {function: bass-minus, colour: brown}
          3: {function: centre-plus, colour: blue/white}
          4: {function: centre-minus, colour: black}
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from undertrim.check.findings import Finding, Subject
from undertrim.record import colours
from undertrim.record.colours import ColourError
from undertrim.record.model import Connector, Pin
from undertrim.record.problem import Level
from undertrim.record.wire_colour import WireColour
from undertrim.words import Message, message

LEVEL = Level.WARNING

_PLUS, _MINUS = "-plus", "-minus"
_ONE = "one"
_ENOUGH = 2
"""So many pairs must agree before another differs from them."""


@dataclass(frozen=True, slots=True)
class Pair:
    """The two wires of one speaker in one plug, with their colours as read."""

    plus: Pin
    minus: Pin
    plus_colour: WireColour
    minus_colour: WireColour

    @property
    def one_colour(self) -> bool:
        """Whether both look the same."""
        return self.plus_colour.all == self.minus_colour.all

    @property
    def striped(self) -> str:
        """Which wire alone has a stripe: `plus`, `minus`, or neither or both."""
        on_plus, on_minus = bool(self.plus_colour.tracers), bool(self.minus_colour.tracers)
        return "" if on_plus == on_minus else "plus" if on_plus else "minus"

    @property
    def grounds(self) -> str:
        """Whether both have one ground colour: `one` or `two`."""
        return _ONE if self.plus_colour.base == self.minus_colour.base else "two"


def check(subject: Subject) -> Iterator[Finding]:
    """Every pair that is told apart otherwise than the others of its plug, or not at all."""
    for connector in subject.record.connectors.values():
        pairs = list(_pairs(connector))
        stripe, ground = _usual(pairs, lambda pair: pair.striped), _usual(pairs, lambda pair: pair.grounds)
        for pair in pairs:
            found = _unlike(pair, stripe, ground)
            if found:
                yield Finding(("connectors", connector.id, "pins", pair.plus.id, "colour"), found)


def _unlike(pair: Pair, stripe: str, ground: str) -> Message | None:
    plus, minus = pair.plus.id, pair.minus.id
    if pair.one_colour:
        return message("rules/pair-unlike-the-others/one-colour", plus=plus, minus=minus, colour=pair.plus.colour)
    if stripe and pair.striped and pair.striped != stripe:
        if pair.striped == "plus":
            return message("rules/pair-unlike-the-others/stripe-on-plus", plus=plus, minus=minus)
        return message("rules/pair-unlike-the-others/stripe-on-minus", plus=plus, minus=minus)
    if ground == _ONE and pair.grounds != ground:
        return message(
            "rules/pair-unlike-the-others/two-grounds",
            plus=plus,
            minus=minus,
            plus_colour=pair.plus.colour,
            minus_colour=pair.minus.colour,
        )
    return None


def _usual(pairs: Sequence[Pair], ask: Callable[[Pair], str]) -> str:
    """What all pairs but one answer, at least two of them; empty where there is no such answer."""
    said = [answer for pair in pairs if not pair.one_colour and (answer := ask(pair))]
    for answer in dict.fromkeys(said):
        if said.count(answer) >= max(_ENOUGH, len(said) - 2) and said.count(answer) > len(said) / 2:
            return answer
    return ""


def _pairs(connector: Connector) -> Iterator[Pair]:
    """Every speaker whose two wires are in this plug and have a colour that can be read."""
    for plus in connector.pins.values():
        if plus.function.endswith(_PLUS):
            wanted = plus.function.removesuffix(_PLUS) + _MINUS
            for minus in connector.pins.values():
                if minus.function == wanted and minus.when == plus.when:
                    colours = _colour(connector, plus), _colour(connector, minus)
                    if colours[0] and colours[1]:
                        yield Pair(plus, minus, colours[0], colours[1])


def _colour(connector: Connector, pin: Pin) -> WireColour | None:
    try:
        return colours.parse(pin.colour, connector.scheme or None) if pin.colour else None
    except ColourError:
        return None
