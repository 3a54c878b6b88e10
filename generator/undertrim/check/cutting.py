"""Finds where a record cuts, drills or blows at a place where that must not be: by its fields, and by its texts."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.check import alterations
from undertrim.check.findings import Finding, Subject
from undertrim.derive.cutting import Act, Bar, acts
from undertrim.derive.procedure.node import home
from undertrim.record.model import Thing
from undertrim.record.source import Pointer
from undertrim.words import Items, Message, all_of, message, quoted

_NAMED = ("hazard", "consequence", "name")


@dataclass(frozen=True, slots=True)
class Words:
    """What a rule says of one reason: of a text that tells it, and of a thing that does it by its fields.

    The catalogue knows `word` in the first, `thing` and `done` in the second, and in both `named`, what is beside it.
    """

    told: Message
    done: Message


def find(subject: Subject, words: Mapping[str, Words]) -> Iterator[Finding]:
    """Every alteration at a place that one of the reasons in `words` speaks against."""
    barred = dict(_barred(subject, words))
    for thing in subject.record.things:
        place = home(thing)
        if place in barred and subject.intact(place):
            yield from _by_fields(thing, place, *barred[place])
    for pointer, text in subject.texts:
        if pointer[:2] in barred and pointer[-1] not in _NAMED:
            said, bar = barred[pointer[:2]]
            for word in alterations.find(text):
                yield Finding(pointer, message(said.told.code, word=word, named=_named(bar)))


def _barred(subject: Subject, words: Mapping[str, Words]) -> Iterator[tuple[Pointer, tuple[Words, Bar]]]:
    for place, bars in subject.bars.items():
        bar = next((bar for bar in bars if bar.why in words), None)
        if bar:
            yield place, (words[bar.why], bar)


def _named(bar: Bar) -> Items:
    return Items(tuple(map(quoted, bar.named)), "semicolon")


def _by_fields(thing: Thing, home: Pointer, said: Words, bar: Bar) -> Iterator[Finding]:
    found: dict[Pointer, list[Act]] = {}
    for act in acts(thing):
        found.setdefault((*home, *act.place), []).append(act)
    for place, same in found.items():
        yield Finding(place, message(said.done.code, thing=thing.id, done=_done(same), named=_named(bar)))


def _done(same: Sequence[Act]) -> Items:
    return all_of(
        *(
            message("cutting/to-get-out", act=act.what, fastener=act.fastener) if act.fastener else quoted(act.what)
            for act in same
        )
    )
