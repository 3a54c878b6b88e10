"""Wire colours: what people write, read into a base colour and its tracers, whose order is always kept."""

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from undertrim.record import trade_words
from undertrim.record.colour_schemes import Vocabulary, schemes, vocabulary
from undertrim.record.nearness import slips
from undertrim.record.wire_colour import Colour, WireColour, colours
from undertrim.words import Items, Message, SaidError, Value, message, one_of, quoted

__all__ = ["Colour", "ColourError", "WireColour", "as_typed", "by_scheme", "candidates", "colours", "parse"]

_WRITE_WORDS = message("colours/write-words")
_LONGEST = 100
_SHORT = 4  # letters; what is shorter is a code, and its word is offered instead
_MOST_OPEN = 3  # no wire has more than a base and two tracers
_MARKERS = frozenset({"stripe", "stripes", "striped", "tracer", "tracers", "trace", "band", "line"})
_NOISE = frozenset({"wire", "lead", "cable", "insulation", "colour", "color", "a"})
_SPLIT = re.compile(r"(?<=[a-z]{3} )w/|[/+,;&_-]|\bwith\b|\band\b")  # `red w/white`, yet W/R starts with white
_LONE_MODIFIER = re.compile(r"\b(light|lt|dark|dk)\b[\s.-]*")


class ColourError(SaidError, ValueError):
    """A text that names no wire colour for certain.

    Where one word of it has several readings, `word` is that word and `readings` are texts to put in its place.
    """

    def __init__(self, said: Message, word: str = "", readings: Iterable[str] = ()) -> None:
        super().__init__(said)
        self.word = word
        self.readings = tuple(readings)

    def __str__(self) -> str:
        return f"{self.message}: {self.hint}"


def parse(text: str, scheme: str | None = None) -> WireColour:
    """Read `red/white`, `RD-WH`, `white with red stripe`, `lt grn`; the first colour is the base.

    `scheme` names the set of letters it is typed in (`colour_schemes.schemes()`). Without one only what no set reads
    differently is read. Raises ColourError where a code has several readings, the order is open, or a word is unknown.
    """
    if len(text) > _LONGEST:
        raise ColourError(message("colours/too-long", count=len(text), hint=_WRITE_WORDS))
    if scheme and scheme not in schemes():
        raise ColourError(message("colours/no-scheme", scheme=scheme, known=Items(tuple(schemes()), "comma")))
    return _parsed(text, scheme or None)


@lru_cache(maxsize=4096)
def _parsed(text: str, scheme: str | None) -> WireColour:
    words = vocabulary(scheme)
    found = [colour for run in _runs(text, words) for colour in _read_run(run, words)]
    if not found:
        raise ColourError(message("colours/none", text=text, hint=_WRITE_WORDS))
    if found[0] in found[1:]:
        raise ColourError(message("colours/same-twice", text=text, colour=found[0]))
    return WireColour(text, found[0], tuple(found[1:]))


def as_typed(text: str, scheme: str = "") -> Value:
    """A colour as it was typed; where it was typed in our words, in those of the reader: `red/white`. Letters and what cannot be read stay."""
    try:
        wire = parse(text, scheme)
    except ColourError:
        return text
    return Items(wire.all, "slash") if "/".join(colour.name for colour in wire.all) == text else text


def candidates(text: str) -> tuple[WireColour, ...]:
    """Every wire that a text may mean where no scheme is known: one where it is certain, none where nothing fits.

    Readings of an open code come in the order of the table, then what the named schemes add. Their order is no rank.
    """
    try:
        return (parse(text),)
    except ColourError:
        found = [*_substituted(text, _MOST_OPEN), *by_scheme(text).values()]
    distinct: dict[tuple[Colour, ...], WireColour] = {}
    for wire in found:
        if len(set(wire.all)) == len(wire.all):
            distinct.setdefault(wire.all, wire)
    return tuple(distinct.values())


def by_scheme(text: str) -> Mapping[str, WireColour]:
    """What a text means in each named scheme in which it can be read."""
    found = {name: _read(text, name) for name in schemes()}
    return {name: wire for name, wire in found.items() if wire}


def _read(text: str, scheme: str) -> WireColour | None:
    try:
        return parse(text, scheme)
    except ColourError:
        return None


def _substituted(text: str, left: int) -> list[WireColour]:
    """The wires that come of putting each reading of the open words in their place, at most `left` words."""
    try:
        return [parse(text)]
    except ColourError as error:
        if not left or not error.word:
            return []
        word = re.compile(rf"(?<![a-z]){re.escape(error.word)}(?![a-z])")
        tries = [word.sub(reading, text.casefold(), count=1) for reading in error.readings]
    return [wire for attempt in tries for wire in _substituted(attempt, left - 1)]


def _runs(text: str, words: Vocabulary) -> list[list[str]]:
    """The words between separators; `light` and `dark` tied to what follows, filler words gone."""
    plain = " ".join(text.casefold().split())
    if plain in words.known:
        return [[plain]]
    pieces = _SPLIT.split(_LONE_MODIFIER.sub(r"\1 ", plain))
    runs = [[word for word in re.split(r"[\s.()]+", piece) if word and word not in _NOISE] for piece in pieces]
    _refuse_open_order(text, [run for run in runs if run], words)
    return [[word for word in run if word not in _MARKERS] for run in runs]


def _refuse_open_order(text: str, runs: list[list[str]], words: Vocabulary) -> None:
    """`red on white`, `red stripe, white` and `red stripe` alone leave the base open: not read."""
    place = next((place for place, word in enumerate(runs[0]) if word in _MARKERS), None) if runs else None
    stripe_too_soon = place is not None and len(_read_run(runs[0][:place], words)) < 2
    if stripe_too_soon or any("on" in run for run in runs):
        raise ColourError(message("colours/base-open", text=text, hint=_WRITE_WORDS))


def _read_run(run: list[str], words: Vocabulary) -> list[Colour]:
    """The colours of one run of words, taking two words together where they name one colour."""
    if not run:
        return []
    pair = " ".join([words.modifiers.get(run[0], run[0]), *run[1:2]])
    if len(run) > 1 and (run[0] in words.modifiers or pair in words.known):
        return [_shade(pair, words), *_read_run(run[2:], words)]
    return [*_word(run[0], words), *_read_run(run[1:], words)]


def _shade(pair: str, words: Vocabulary) -> Colour:
    """`lime green` as it stands, or `light grn` by way of the colour that `grn` means."""
    modifier, _, word = pair.partition(" ")
    name = pair if pair in words.known else f"{modifier} {_word(word, words)[0].name}"
    if name not in words.known:
        raise ColourError(message("colours/no-shade", name=name, known=_shades(modifier, words)))
    return words.known[name]


def _word(word: str, words: Vocabulary) -> list[Colour]:
    """One word or code, a modifier written on to its colour such as `ltgrn`, or codes written together."""
    if word in words.known:
        return [words.known[word]]
    if word in words.ambiguous:
        names = words.ambiguous[word]
        said = message("colours/several-meanings", word=word.upper(), meanings=one_of(*names))
        raise ColourError(said, word, names)
    pieces = [words.joined.get(word[at : at + 2]) for at in range(0, len(word), 2)]
    if all(pieces):
        return [piece for piece in pieces if piece]
    joined = re.fullmatch(r"(light|lt|l|dark|dk|d)(\w{2,})", word)
    shade = f"{words.modifiers.get(joined[1])} {_name(joined[2], words)}" if joined else ""
    if shade in words.known:
        return [words.known[shade]]
    raise _unknown(word, words)


def _name(word: str, words: Vocabulary) -> str:
    return words.known[word].name if word in words.known else word


def _unknown(word: str, words: Vocabulary) -> ColourError:
    """Two joined IEC 60757 codes lose the base; anything else is met with the nearest word."""
    halves = (word[:2], word[2:])
    if len(word) == 4 and all(half in words.known for half in halves):
        both = ["/".join(pair) for pair in (halves, halves[::-1])]
        hint = message("nearness/write", names=one_of(*(quoted(pair.upper()) for pair in both)))
        return ColourError(message("colours/base-open", text=word.upper(), hint=hint), word, both)
    if words.scheme:
        said = message("colours/unknown-in-scheme", word=word, scheme=words.scheme, hint=_nearest(word, words))
        return ColourError(said)
    return ColourError(message("colours/unknown", word=word, hint=_nearest(word, words)))


def _shades(modifier: str, words: Vocabulary) -> Items:
    names = {colour.name for colour in words.known.values()}
    return Items(tuple(sorted(name for name in names if name.startswith(f"{modifier} "))), "comma")


def _nearest(word: str, words: Vocabulary) -> Message:
    names = [name for name in words.known if len(name) > 2]
    if meant := trade_words.meant(word, names):
        return message("nearness/write", names=quoted(meant[0]))
    found = {words.known[name].name: name for name in slips(word, names)}
    close = sorted(name if name in found.values() or len(alias) < _SHORT else alias for name, alias in found.items())
    return message("nearness/meant", names=one_of(*map(quoted, close))) if close else _WRITE_WORDS
