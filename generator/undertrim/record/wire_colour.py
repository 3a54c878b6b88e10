"""What a wire colour is: the colours of the table, and a wire with its base and tracers."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from undertrim import resources
from undertrim.words import Language, Value, all_of, message, sentence, spoken

_EARTH = "GNYE"
_GREEN, _YELLOW = "GN", "YE"


@dataclass(frozen=True, slots=True)
class Colour:
    """One insulation colour: letter code (IEC 60757 or declared local), name, screen colours as `#rrggbb`.

    `stripe` is empty but for green-and-yellow, one colour drawn with two. `local` marks our own codes.
    """

    code: str
    name: str
    hex: str
    stripe: str = ""
    local: bool = False

    def say(self, speech: Language) -> str:
        """Its name in words of a language."""
        return speech.text(f"wire-colours/colour/{self.code}/name", self.name)


@dataclass(frozen=True, slots=True)
class WireColour:
    """A wire as its text was read: the base, then the tracers in the order written."""

    text: str
    base: Colour
    tracers: tuple[Colour, ...] = ()

    @property
    def all(self) -> tuple[Colour, ...]:
        """The base, then the tracers."""
        return (self.base, *self.tracers)

    def say(self, speech: Language) -> str:
        """In words: `red`, `red with white tracer`, `white with brown and black tracers`."""
        if not self.tracers:
            return self.base.say(speech)
        tracers: dict[str, Value] = {"tracers": all_of(*self.tracers), "count": len(self.tracers)}
        return sentence(message("colours/with-tracers", base=self.base, **tracers), speech)

    @property
    def words(self) -> str:
        """The same to the reader; for what cannot hand on the colour."""
        return self.say(spoken())

    @property
    def iec(self) -> str:
        """Letter codes, base then tracers, joined by `/`: `RD/WH`.

        IEC 60757:2021, 5.1 would put the letters in the order of its table, which loses the base; we keep it.
        """
        return "/".join(colour.code for colour in self.all)

    @property
    def iec_sorted(self) -> str:
        """Letter codes in the standard's own combined form, `RDWH` whichever of the two is the base.

        IEC 60757:2021, 5.1: in the order of table 1, declared local codes after it. Empty for green with yellow as
        base and tracer: the standard has `GNYE` for protective earth alone. Never to be read back: the base is lost.
        """
        codes = {colour.code for colour in self.all}
        if {_GREEN, _YELLOW} <= codes:
            return ""
        return "".join(colour.code for colour in colours() if colour.code in codes)

    @property
    def protective_earth(self) -> bool:
        """Whether green-and-yellow is in it as one colour, the mark of protective earth: to be doubted in a car."""
        return _EARTH in (colour.code for colour in self.all)

    @property
    def stripes(self) -> tuple[str, ...]:
        """The `#rrggbb` of everything drawn on the base, in order."""
        own = (self.base.stripe,) if self.base.stripe else ()
        return own + tuple(tracer.hex for tracer in self.tracers)


@cache
def colours() -> tuple[Colour, ...]:
    """Every colour of the table: the IEC 60757 ones in the order of the standard, then the local ones."""
    return tuple(_colour(row) for row in resources.table("wire-colours")["colour"])


@cache
def by_code() -> Mapping[str, Colour]:
    """The colours of the table by their code in capitals."""
    return {colour.code: colour for colour in colours()}


def _colour(row: Mapping[str, str]) -> Colour:
    return Colour(row["code"], row["name"], row["hex"], row.get("stripe", ""), row["source"] == "local")
