"""Every fact of a record that is another one, new or gone: both records are gone through side by side, by their ids."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from undertrim.derive.evidence.facts import described, schema_at
from undertrim.derive.evidence.fingerprint import NO_FACTS
from undertrim.derive.evidence.readings import Reading, read, same
from undertrim.derive.evidence.typed_names import typed_names
from undertrim.derive.fact_names import fact_name
from undertrim.derive.review import alike
from undertrim.derive.review.change import FactChange, GearSide, Side, Sort, Weight
from undertrim.derive.review.weighing import weighed
from undertrim.record.model import Caution, Evidence, Month, Ref, When
from undertrim.record.model.car_facts import Todo
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity

_BESIDE = frozenset({"source", "form_of", "named_for", "taken"})
"""What says something about the facts beside it, or follows from how they are written."""
_LEAVES = (str, int, Quantity, Month, When, Ref)
_UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class _At:
    """A place on both sides, with the evidence that is nearest above it."""

    pointer: Pointer
    was: Pointer
    source_before: tuple[str, ...] = ()
    source_after: tuple[str, ...] = ()

    def below(self, now: str | int, was: str | int | None = None) -> "_At":
        """One step further down; `was` is the key of before where it is another one."""
        return _At(
            (*self.pointer, now), (*self.was, now if was is None else was), self.source_before, self.source_after
        )

    def told(self, before: object, after: object) -> "_At":
        """With the evidence that the things here name."""
        return _At(
            self.pointer,
            self.was,
            getattr(before, "source", ()) or self.source_before,
            getattr(after, "source", ()) or self.source_after,
        )


def changes(before: Side, after: Side, renamed: alike.Renamed) -> Iterator[FactChange]:
    """The changed facts, in the order of the record, each weighed."""
    walk = _Walk(before, after, "vehicle", renamed)
    for name, own in typed_names(after.record).items():
        if name not in NO_FACTS and name not in _BESIDE:
            yield from walk.differing(
                getattr(before.record, own), getattr(after.record, own), _At((name,), (name,)), whole=False
            )


def of_gear(before: GearSide, after: GearSide) -> Iterator[FactChange]:
    """The changed facts of a piece of gear."""
    walk = _Walk(before, after, "gear", {})
    yield from walk.differing(before.record.gear, after.record.gear, _At(("gear",), ("gear",)), whole=False)


@dataclass(frozen=True)
class _Walk:
    before: Side | GearSide
    after: Side | GearSide
    document: str
    renamed: alike.Renamed

    def differing(self, was: Any, now: Any, at: _At, *, whole: bool) -> Iterator[FactChange]:
        """What differs at a place and below; within a `whole` thing that is new only what is not plain, within one that is gone what is less cautious without it."""
        if _nothing(was) and _nothing(now):
            return
        if _is_leaf(was) and _is_leaf(now):
            yield from self._leaf(was, now, at, whole=whole)
            return
        here = at.told(was, now)
        told = (_nothing(was) or _nothing(now)) and len(at.pointer) > 1 and not isinstance(was or now, Mapping | tuple)
        if told:
            change = self._change(was, now, here, thing=True)
            if not whole or _told_within(change):
                yield change
            if change.lighter:
                return  # what is in it says no more
        for inner_was, inner_now, below in self._below(was, now, here):
            yield from self.differing(inner_was, inner_now, below, whole=whole or told)

    def _below(self, was: Any, now: Any, at: _At) -> Iterator[tuple[Any, Any, _At]]:
        some = now if not _nothing(now) else was
        if isinstance(some, Mapping):
            yield from self._entries(was or {}, now or {}, at)
        elif isinstance(some, tuple):
            one, other = was or (), now or ()
            for old, new in alike.entries(one, other):
                inner = at.below(new if new is not None else old or 0, old)
                yield one[old] if old is not None else None, other[new] if new is not None else None, inner
        elif is_dataclass(some) and not isinstance(some, type):
            for name in dict.fromkeys((*_names(was), *_names(now))):
                if name not in _BESIDE:
                    yield _field(was, name), _field(now, name), at.below(name)

    def _entries(self, was: Mapping[str, Any], now: Mapping[str, Any], at: _At) -> Iterator[tuple[Any, Any, _At]]:
        own = self.renamed.get(str(at.pointer[0]), {}) if len(at.pointer) == 1 else alike.of_entries(was, now)
        back = {new: old for old, new in own.items()}
        for key in dict.fromkeys((*now, *(key for key in was if key not in own))):
            old = back.get(key, key)
            yield was.get(old), now.get(key), at.below(key, old)

    def _leaf(self, was: Any, now: Any, at: _At, *, whole: bool) -> Iterator[FactChange]:
        if _text(was) == _text(now):
            return
        readings = [self._read(one, at.pointer) for one in (was, now)]
        if _text(was) and _text(now) and (same(*readings) or self._renaming(_text(was), _text(now))):
            return
        change = self._change(was, now, at, thing=False)
        if not whole or _told_within(change):
            yield change

    def _read(self, value: Any, pointer: Pointer) -> Reading:
        if isinstance(self.after, Side):
            fact = described(self.after.record, pointer, _text(value))
            return read(_text(value), fact.kind, fact.form, fact.scheme)
        return read(_text(value), schema_at(pointer).get("quantity", {}).get("kind", ""))

    def _change(self, was: Any, now: Any, at: _At, *, thing: bool) -> FactChange:
        gone = _nothing(now)
        data, pointer = (self.before.data, at.was) if gone else (self.after.data, at.pointer)
        name = fact_name(data, pointer, self.document)
        said_before, said_after = (
            _evidence(self.before, at.source_before),
            _evidence(self.after, at.source_after),
        )
        return weighed(
            FactChange(
                at.pointer,
                name,
                _sort(_text(was), _text(now)) if not thing else Sort.GONE if gone else Sort.ADDED,
                _gist(was) if thing else _text(was),
                _gist(now) if thing else _text(now),
                thing=thing,
                said_before=said_before,
                said_after=said_after,
                same_source=set(map(_words, said_after)) <= set(map(_words, said_before)),
                taken=_taken(self.before, at.was) if gone else _taken(self.after, at.pointer),
            ),
            was,
            now,
        )

    def _renaming(self, was: str, now: str) -> bool:
        """Whether the two are the same names, as they were before and as they are now."""
        every = {old: new for some in self.renamed.values() for old, new in some.items()}
        return ", ".join(every.get(name, name) for name in was.split(", ")) == now


def _told_within(change: FactChange) -> bool:
    """Whether a fact of a thing that is new or gone is told beside it."""
    return change.lighter or (change.sort is not Sort.GONE and change.weight is not Weight.PLAIN)


def _gist(thing: object) -> str:
    """What tells a thing without a name from its neighbours."""
    said = thing.hazard if isinstance(thing, Caution) else thing.do if isinstance(thing, Todo) else ""
    return said.rstrip(".")


def _taken(side: Side | GearSide, pointer: Pointer) -> str:
    """The record that what stands at a place is taken from; empty where this one says it itself."""
    taken = side.record.taken if isinstance(side, Side) else {}
    return next(
        (taken[pointer[:depth]].address for depth in range(len(pointer), 0, -1) if pointer[:depth] in taken), ""
    )


def _words(one: Evidence) -> str:
    return repr(one)


def _evidence(side: Side | GearSide, names: tuple[str, ...]) -> tuple[Evidence, ...]:
    known = side.record.evidence if isinstance(side, Side) else {}
    return tuple(known[name] for name in names if name in known)


def _sort(was: str, now: str) -> Sort:
    if now == _UNKNOWN:
        return Sort.UNKNOWN
    if was == _UNKNOWN and now:
        return Sort.KNOWN
    return Sort.CHANGED if was and now else Sort.ADDED if now else Sort.GONE


def _nothing(value: object) -> bool:
    return value is None or value in ("", (), {})


def _is_leaf(value: object) -> bool:
    plain = isinstance(value, tuple) and all(isinstance(one, _LEAVES) for one in value)
    return _nothing(value) or isinstance(value, _LEAVES) or plain


def _text(value: object) -> str:
    """A value as typed; empty for nothing."""
    if _nothing(value):
        return ""
    if isinstance(value, tuple):
        return ", ".join(map(_text, value)) if _is_leaf(value) else ""
    if isinstance(value, When):
        return ", ".join(f"{name}={' or '.join(choices)}" for name, choices in value.clauses)
    if isinstance(value, Ref):
        return " ".join(filter(None, (value.part, value.side, f"({_text(value.when)})" if value.when.clauses else "")))
    if isinstance(value, Quantity):
        return value.text
    return str(value) if isinstance(value, str | int | Month) else ""


def _names(value: object) -> Iterator[str]:
    if is_dataclass(value) and not isinstance(value, type):
        yield from typed_names(value)


def _field(value: object, name: str) -> Any:
    if not is_dataclass(value) or isinstance(value, type):
        return None
    own = typed_names(value).get(name, "")
    usual = {entry.name: entry.default for entry in fields(value)}
    found = getattr(value, own) if own else None
    return None if own and found == usual.get(own) and not isinstance(found, tuple) and found in _USUAL else found


_USUAL = ("no", "yes", "ordinary")
"""Words that stand where nothing was typed: such a field says nothing by itself."""
