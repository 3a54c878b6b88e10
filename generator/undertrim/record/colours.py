"""Wire colours: what people write, read into a base colour and its tracers, whose order is always kept."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache

from undertrim import resources

_WRITE_WORDS = "write the colours as words, base first, for example 'red/white'"
_LONGEST = 100
_MODIFIERS = {"light": "light", "lt": "light", "l": "light", "dark": "dark", "dk": "dark", "d": "dark"}
_MARKERS = frozenset({"stripe", "stripes", "striped", "tracer", "tracers", "trace", "band", "line"})
_NOISE = frozenset({"wire", "lead", "cable", "insulation", "colour", "color", "a"})
_SPLIT = re.compile(r"(?<=[a-z]{3} )w/|[/+,;&_-]|\bwith\b|\band\b")  # `red w/white`, yet W/R starts with white
_LONE_MODIFIER = re.compile(r"\b(light|lt|dark|dk)\b[\s.-]*")


class ColourError(ValueError):
    """A text that names no wire colour for certain; `message` says what is wrong, `hint` the way out."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(f"{message}: {hint}")
        self.message = message
        self.hint = hint


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


@dataclass(frozen=True, slots=True)
class WireColour:
    """A wire as its text was read: the base, then the tracers in the order written."""

    text: str
    base: Colour
    tracers: tuple[Colour, ...] = ()

    @property
    def words(self) -> str:
        """In words: `red`, `red with white tracer`, `white with brown and black tracers`."""
        if not self.tracers:
            return self.base.name
        names = " and ".join(tracer.name for tracer in self.tracers)
        return f"{self.base.name} with {names} tracer{'s' if len(self.tracers) > 1 else ''}"

    @property
    def iec(self) -> str:
        """Letter codes, base then tracers, joined by `/`: `RD/WH`.

        IEC 60757:2021, 5.1 would put the letters in the order of its table, which loses the base; we keep it.
        """
        return "/".join(colour.code for colour in (self.base, *self.tracers))

    @property
    def stripes(self) -> tuple[str, ...]:
        """The `#rrggbb` of everything drawn on the base, in order."""
        own = (self.base.stripe,) if self.base.stripe else ()
        return own + tuple(tracer.hex for tracer in self.tracers)


@dataclass(frozen=True, slots=True)
class _Vocabulary:
    """The words and codes of one way of writing colours, case-folded, and the codes it leaves open."""

    known: Mapping[str, Colour]
    ambiguous: Mapping[str, Sequence[str]]


@cache
def colours() -> tuple[Colour, ...]:
    """Every colour of the table: the IEC 60757 ones in the order of the standard, then the local ones."""
    return tuple(_colour(row) for row in resources.table("wire-colours")["colour"])


def parse(text: str) -> WireColour:
    """Read `red/white`, `RD-WH`, `white with red stripe`, `lt grn`; the first colour is the base.

    Raises ColourError where a code has several readings, the order is open, or a word is unknown.
    """
    if len(text) > _LONGEST:
        raise ColourError(f"{len(text)} characters is no wire colour", _WRITE_WORDS)
    vocabulary = _plain_vocabulary()
    found = [colour for run in _runs(text, vocabulary) for colour in _read_run(run, vocabulary)]
    if not found:
        raise ColourError(f"no colour in '{text}'", _WRITE_WORDS)
    if found[0] in found[1:]:
        raise ColourError(f"'{text}' has {found[0].name} as base and as tracer", "write one colour only")
    return WireColour(text, found[0], tuple(found[1:]))


def _colour(row: Mapping[str, str]) -> Colour:
    return Colour(row["code"], row["name"], row["hex"], row.get("stripe", ""), row["source"] == "local")


@cache
def _plain_vocabulary() -> _Vocabulary:
    """The vocabulary without a named scheme: words, IEC and local codes, short forms all sets share."""
    table = resources.table("wire-colours")
    known: dict[str, Colour] = {}
    for row in table["colour"]:
        known.update(dict.fromkeys([row["code"].casefold(), row["name"], *row["words"]], _colour(row)))
    return _Vocabulary(known, {code.casefold(): names for code, names in table["ambiguous"].items()})


def _runs(text: str, vocabulary: _Vocabulary) -> list[list[str]]:
    """The words between separators; `light` and `dark` tied to what follows, filler words gone."""
    plain = " ".join(text.casefold().split())
    if plain in vocabulary.known:
        return [[plain]]
    pieces = _SPLIT.split(_LONE_MODIFIER.sub(r"\1 ", plain))
    runs = [[word for word in re.split(r"[\s.()]+", piece) if word and word not in _NOISE] for piece in pieces]
    _refuse_open_order(text, [run for run in runs if run], vocabulary)
    return [[word for word in run if word not in _MARKERS] for run in runs]


def _refuse_open_order(text: str, runs: list[list[str]], vocabulary: _Vocabulary) -> None:
    """`red on white`, `red stripe, white` and `red stripe` alone leave the base open: not read."""
    place = next((place for place, word in enumerate(runs[0]) if word in _MARKERS), None) if runs else None
    stripe_too_soon = place is not None and len(_read_run(runs[0][:place], vocabulary)) < 2
    if stripe_too_soon or any("on" in run for run in runs):
        raise ColourError(f"'{text}' does not say which colour is the base", _WRITE_WORDS)


def _read_run(run: list[str], vocabulary: _Vocabulary) -> list[Colour]:
    """The colours of one run of words, taking two words together where they name one colour."""
    if not run:
        return []
    pair = " ".join([_MODIFIERS.get(run[0], run[0]), *run[1:2]])
    if len(run) > 1 and (run[0] in _MODIFIERS or pair in vocabulary.known):
        return [_shade(pair, vocabulary), *_read_run(run[2:], vocabulary)]
    return [_word(run[0], vocabulary), *_read_run(run[1:], vocabulary)]


def _shade(pair: str, vocabulary: _Vocabulary) -> Colour:
    """`lime green` as it stands, or `light grn` by way of the colour that `grn` means."""
    modifier, _, word = pair.partition(" ")
    name = pair if pair in vocabulary.known else f"{modifier} {_word(word, vocabulary).name}"
    if name not in vocabulary.known:
        raise ColourError(f"no wire colour is called '{name}'", _shades(modifier, vocabulary))
    return vocabulary.known[name]


def _word(word: str, vocabulary: _Vocabulary) -> Colour:
    """One word or code, or a modifier written on to its colour such as `ltgrn`."""
    if word in vocabulary.known:
        return vocabulary.known[word]
    if word in vocabulary.ambiguous:
        readings = " or ".join(vocabulary.ambiguous[word])
        raise ColourError(f"'{word.upper()}' has no single meaning", f"it may be {readings}; write the word")
    joined = re.fullmatch(r"(light|lt|l|dark|dk|d)(\w{2,})", word)
    if joined and f"{_MODIFIERS[joined[1]]} {_name(joined[2], vocabulary)}" in vocabulary.known:
        return vocabulary.known[f"{_MODIFIERS[joined[1]]} {_name(joined[2], vocabulary)}"]
    raise _unknown(word, vocabulary)


def _name(word: str, vocabulary: _Vocabulary) -> str:
    return vocabulary.known[word].name if word in vocabulary.known else word


def _unknown(word: str, vocabulary: _Vocabulary) -> ColourError:
    """Two joined IEC 60757 codes lose the base; anything else is met with the nearest word."""
    halves = (word[:2], word[2:])
    if len(word) == 4 and all(half in vocabulary.known for half in halves):
        either = " or ".join(f"'{a}/{b}'".upper() for a, b in (halves, halves[::-1]))
        return ColourError(f"'{word.upper()}' does not say which colour is the base", f"write {either}")
    return ColourError(f"'{word}' is no known wire colour", _nearest(word, vocabulary))


def _shades(modifier: str, vocabulary: _Vocabulary) -> str:
    names = {colour.name for colour in vocabulary.known.values()}
    return "there is " + ", ".join(sorted(name for name in names if name.startswith(f"{modifier} ")))


def _nearest(word: str, vocabulary: _Vocabulary) -> str:
    names = sorted(name for name in vocabulary.known if len(name) > 2)
    close = get_close_matches(word, names, n=1)
    return f"did you mean '{close[0]}'?" if close else _WRITE_WORDS
