"""Finds where a record cuts, drills or blows at a place where that must not be: by its fields, and by its texts."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from undertrim.check import alterations, needs
from undertrim.check.findings import Finding, Subject
from undertrim.check.stated import texts
from undertrim.derive.cutting import Act, Bar, acts, bars
from undertrim.record.model import Thing
from undertrim.record.source import Pointer

_NAMED = ("hazard", "consequence", "name")


@dataclass(frozen=True, slots=True)
class Words:
    """What a rule says of one reason: behind a word of a text, behind what a thing does by its fields, and the way out."""

    beside: str
    holds: str
    hint: str


def find(subject: Subject, words: Mapping[str, Words]) -> Iterator[Finding]:
    """Every alteration at a place that one of the reasons in `words` speaks against."""
    barred = dict(_barred(subject, words))
    for thing in subject.record.things:
        home = needs.home(thing)
        if home in barred and subject.intact(home):
            yield from _by_fields(thing, home, *barred[home])
    for pointer, text in texts(subject.fields):
        if pointer[:2] in barred and pointer[-1] not in _NAMED:
            said, fill = barred[pointer[:2]]
            for word in alterations.find(text):
                yield Finding(pointer, f"'{word}' {fill(said.beside)}", said.hint)


def _barred(
    subject: Subject, words: Mapping[str, Words]
) -> Iterator[tuple[Pointer, tuple[Words, Callable[[str], str]]]]:
    for thing in subject.record.things:
        bar = next((bar for bar in bars(subject.record, thing) if bar.why in words), None)
        if bar:
            yield needs.home(thing), (words[bar.why], _filling(bar))


def _filling(bar: Bar) -> Callable[[str], str]:
    return lambda text: text.format(named="; ".join(f"'{name}'" for name in bar.named))


def _by_fields(thing: Thing, home: Pointer, said: Words, fill: Callable[[str], str]) -> Iterator[Finding]:
    found: dict[Pointer, list[Act]] = {}
    for act in acts(thing):
        found.setdefault((*home, *act.place), []).append(act)
    for place, same in found.items():
        done = " and ".join(f"'{act.what}'" + (f" to get '{act.fastener}' out" if act.fastener else "") for act in same)
        yield Finding(place, f"'{thing.id}' is altered by {done}, and {fill(said.holds)}", said.hint)
