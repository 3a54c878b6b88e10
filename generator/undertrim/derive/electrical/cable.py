"""Chooses a cable by all three conditions: the drop, what it may carry, and the fuse that guards it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.electrical import ampacity, drop, fuses
from undertrim.derive.electrical.ampacity import Surroundings
from undertrim.derive.electrical.bounds import Refused, given, or_usual, usual
from undertrim.derive.electrical.conductors import Size, scheme_word, sizes
from undertrim.derive.electrical.drop import Circuit, Path
from undertrim.derive.electrical.fuses import SLACK
from undertrim.derive.electrical.numbers import Amount, Number, Origin, number
from undertrim.words import Message, all_of, message, one_of, word


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """What a cable must do. `limit` is a share of the voltage, `share` of its rating what a fuse is loaded with for long;
    `fuse` in A where one is given and none is to be chosen. What is None is usual."""

    scheme: str = "awg"
    insulation: int | None = None
    place: str = "cabin"
    limit: float | None = None
    share: float | None = None
    fuse: float | None = None


@dataclass(frozen=True, slots=True)
class Condition:
    """One of "drop", "ampacity", "fuse": what it asks, and the thinnest size that meets it (None: none does)."""

    name: str
    words: Message
    size: str | None


@dataclass(frozen=True, slots=True)
class Choice:
    """The thinnest size that meets all conditions, or None; `binding` are the conditions that a thinner one fails.

    `ampacity` and `fuse` in A, `volts` the drop in V and `share` as a share of the voltage.
    """

    size: str | None
    binding: tuple[str, ...]
    conditions: tuple[Condition, ...]
    volts: float | None
    share: float | None
    ampacity: float | None
    fuse: float | None
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


@dataclass(frozen=True, slots=True)
class _Asked:
    """A path and wishes as numbers; `fuse` is the one chosen or given, in A."""

    made: Circuit
    insulation: Number
    surroundings: Surroundings
    scheme: str
    limit: Number
    share: Number
    fuse: Number | None

    def drops_little(self, size: Size) -> bool:
        lost = self.made.lost(size, self.made.conductor.value)
        return lost <= self.limit.value * self.made.voltage.value * (1 + SLACK)

    def carries(self, size: Size, amps: float) -> bool:
        allowed = ampacity.ampacity(size, self.surroundings)
        return allowed is not None and allowed * (1 + SLACK) >= amps


def choose(path: Path, wishes: Wishes) -> Choice:
    """The cable and fuse for a path. Raises Refused for values that cannot be meant."""
    asked = _asked(path, wishes)
    offered = [size for size in sizes(asked.scheme) if size.gauge]  # what a thinner one carries is not known
    conditions = tuple(_conditions(asked, offered))
    if any(condition.size is None for condition in conditions):
        return _none(asked, conditions)
    names = [size.name for size in offered]
    chosen = max(names.index(condition.size or "") for condition in conditions)
    binding = tuple(one.name for one in conditions if chosen and one.size == names[chosen])
    return _chosen(asked, offered[chosen], conditions, binding)


def _asked(path: Path, wishes: Wishes) -> _Asked:
    made = drop.circuit(path)
    insulation = _insulation(wishes.insulation)
    share = fuses.load_share(wishes.share)
    return _Asked(
        made=made,
        insulation=insulation,
        surroundings=Surroundings(int(insulation.value), wishes.place, made.times.value),
        scheme=wishes.scheme,
        limit=or_usual("limit", wishes.limit, "limit", message("electrical/drop-at-most")),
        share=share,
        fuse=_fuse(made.current, share, wishes.fuse),
    )


def _insulation(bears: int | None) -> Number:
    label = message("electrical/insulation-bears")
    if bears is None:
        return number(label, usual("insulation"), "degC", "usual")
    return number(label, float(bears), "degC", "given")


def _fuse(current: Number, share: Number, own: float | None) -> Number | None:
    if own is None:
        amps = fuses.least(current.value, share.value)
        return None if amps is None else number(message("electrical/fuse"), amps, "A")
    fuse = given("fuse", own)
    if fuse.value < current.value * (1 - SLACK):
        least = Amount(current.value / share.value, "A")
        raise Refused(message("electrical/fuse-too-small", fuse=fuse.text, current=current.text, least=least))
    return fuse


def _conditions(asked: _Asked, offered: Sequence[Size]) -> Iterator[Condition]:
    made, fuse = asked.made, asked.fuse
    little = next((size.name for size in offered if asked.drops_little(size)), None)
    yield Condition("drop", message("electrical/lose", limit=asked.limit.text, voltage=made.voltage.text), little)
    carrying = next((size.name for size in offered if asked.carries(size, made.current.value)), None)
    yield Condition("ampacity", message("electrical/carry", current=made.current.text), carrying)
    if fuse is None:
        need = Amount(made.current.value / asked.share.value, "A")
        yield Condition("fuse", message("electrical/no-fuse-so-large", least=need), None)
        return
    guarded = next((size.name for size in offered if asked.carries(size, fuse.value)), None)
    yield Condition("fuse", message("electrical/carry-what-fuse-lets", fuse=fuse.text), guarded)


def _none(asked: _Asked, conditions: tuple[Condition, ...]) -> Choice:
    unmet = tuple(one.name for one in conditions if one.size is None)
    headline = message(
        "electrical/no-cable",
        scheme=scheme_word(asked.scheme),
        conditions=all_of(*(one.words for one in conditions if one.size is None)),
        ways=one_of(*dict.fromkeys(_WAYS_OUT[name] for name in unmet)),
    )
    return Choice(None, unmet, conditions, None, None, None, None, headline, _inputs(asked), drop.notes(asked.made))


def _chosen(asked: _Asked, size: Size, conditions: tuple[Condition, ...], binding: tuple[str, ...]) -> Choice:
    lost, carried, fuse = drop.dropped(asked.made, size), ampacity.ampacity(size, asked.surroundings), asked.fuse
    assert carried is not None
    assert fuse is not None
    allowed = number(message("electrical/cable-carries"), carried, "A", _source(asked))
    headline = message(
        "electrical/cable",
        size=size.label,
        fuse=fuse.text,
        lost=Amount(lost.volts, "V"),
        share=Amount(lost.share, "share"),
        voltage=asked.made.voltage.text,
        decides=_decides(binding),
    )
    numbers = (*lost.numbers, asked.limit, asked.share, *_around(asked), allowed, fuse)
    notes = (*_fuse_notes(asked, fuse), *drop.notes(asked.made), *ampacity.notes(size, asked.surroundings))
    return Choice(size.name, binding, conditions, lost.volts, lost.share, carried, fuse.value, headline, numbers, notes)


_SHARE_OUT = message("electrical/share-out")
_WAYS_OUT = {"drop": message("electrical/shorten"), "ampacity": _SHARE_OUT, "fuse": _SHARE_OUT}


def _decides(binding: tuple[str, ...]) -> Message:
    """Which condition a thinner cable fails."""
    if not binding:
        return message("electrical/thinnest-does")
    named = all_of(*(message(f"electrical/decider-{name}") for name in binding))
    return message("electrical/decides", conditions=named, count=len(binding))


def _fuse_notes(asked: _Asked, fuse: Number) -> Iterator[Message]:
    yield message("electrical/fuse-families", fuse=fuse.text, families=fuses.described(fuse.value))
    yield from fuses.notes(fuse.value)
    current, share = asked.made.current, asked.share
    if current.value > share.value * fuse.value * (1 + SLACK):
        yield message("electrical/fuse-ages", current=current.text, share=share.text)


def _inputs(asked: _Asked) -> tuple[Number, ...]:
    return (*asked.made.numbers, asked.limit, asked.share, *_around(asked))


def _around(asked: _Asked) -> Iterator[Number]:
    yield asked.insulation
    if asked.surroundings.place == "engine":
        remembered = ampacity.remembered(asked.surroundings)
        origin = message("electrical/from-memory") if remembered else message("electrical/by-note-1")
        yield number(message("electrical/engine-factor"), ampacity.engine_factor(asked.surroundings), "times", origin)


def _source(asked: _Asked) -> Origin:
    source = word("electrical-ampacity", "origin")
    return source if asked.surroundings.times == 1 else message("electrical/scaled", source=source)
