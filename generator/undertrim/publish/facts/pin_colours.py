"""The colour of a wire at a pin as data: words, letters, screen colours, and what to doubt."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.record import colours
from undertrim.words import Value, message

_EARTH = message("plugs/protective-earth")


@dataclass(frozen=True, slots=True)
class Colour:
    """A wire colour: in words, by its letters, as colours of the screen, and what to doubt in it."""

    words: Value
    iec: str
    iec_sorted: str
    base: str | None
    tracers: Sequence[str]
    doubt: Value
    may_be: Sequence[Value]


def colour(text: str, scheme: str = "") -> Colour | None:
    """A wire colour as typed in a scheme; None where it is not recorded.

    One that cannot be read is shown as typed, and `may_be` says what it could mean.
    """
    if not text:
        return None
    try:
        wire = colours.parse(text, scheme)
    except colours.ColourError:
        return _unread(text)
    return Colour(
        words=wire,
        iec=wire.iec,
        iec_sorted=wire.iec_sorted,
        base=wire.base.hex,
        tracers=wire.stripes,
        doubt=_EARTH if wire.protective_earth else "",
        may_be=(),
    )


def _unread(text: str) -> Colour:
    may_be = list[Value](colours.candidates(text))
    return Colour(text, "", "", base=None, tracers=(), doubt="", may_be=may_be)
