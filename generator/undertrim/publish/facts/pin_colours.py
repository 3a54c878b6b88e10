"""The colour of a wire at a pin as data: words, letters, screen colours, and what to doubt."""

from typing import Any

from undertrim.record import colours
from undertrim.words import message

Data = dict[str, Any]

_EARTH = message("plugs/protective-earth")


def colour(text: str, scheme: str = "") -> Data | None:
    """A wire colour as typed in a scheme; None where it is not recorded.

    One that cannot be read is shown as typed, and `may_be` says what it could mean.
    """
    if not text:
        return None
    try:
        wire = colours.parse(text, scheme)
    except colours.ColourError:
        return _unread(text)
    return {
        "words": wire.words,
        "iec": wire.iec,
        "iec_sorted": wire.iec_sorted,
        "base": wire.base.hex,
        "tracers": list(wire.stripes),
        "doubt": _EARTH if wire.protective_earth else "",
        "may_be": [],
    }


def _unread(text: str) -> Data:
    may_be = [wire.words for wire in colours.candidates(text)]
    return {"words": text, "iec": "", "iec_sorted": "", "base": None, "tracers": [], "doubt": "", "may_be": may_be}
