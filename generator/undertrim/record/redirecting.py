"""Leads what names a thing to the forms in which that stands in the whole, for the cars that have both.

A list of names gets all forms: what a car does not have is passed over there. What names one thing only stands in several forms
itself. The schema says beside a field what its text `leads` to.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record import dividing
from undertrim.record.complaint import Complaint
from undertrim.record.copying import copied
from undertrim.record.dividing import WHEN, Clauses
from undertrim.record.forms import Forms
from undertrim.record.numerals import quoted
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer
from undertrim.words import message

Options = list[tuple[str, Clauses]]
"""What a name can lead to, each with its cars."""

_SECTIONS = {
    "part": ("parts",),
    "thing": ("parts", "preps"),
    "prep": ("preps",),
    "opening": ("openings",),
    "run": ("runs",),
}


def lead(forms: Forms, shape: Shape, whole: Data) -> None:
    """Do so throughout a whole, until nothing more is divided by it."""
    told = -1
    while told != (told := len(forms.known)) and forms.known:
        _Leading(forms).block(shape, whole, (), {})


@dataclass(slots=True)
class _Leading:
    """One walk over a whole; what it divides is known to the next."""

    forms: Forms

    def block(self, shape: Shape, block: dict[str, Data], place: Pointer, cars: Clauses) -> None:
        """Everything below a mapping."""
        for key in list(block):
            below = shape.below(key)
            if below is None:
                continue
            value, spot = block[key], (*place, key)
            if isinstance(value, list):
                block[key] = self._list(below, value, spot, cars)
            elif isinstance(value, dict):
                copies = self._thing(below, value, spot, cars) if may_be_several(shape, below) else None
                if copies:
                    self._spread_out(block, spot, copies)
                elif copies is None:
                    self.block(below, value, spot, cars)

    def _list(self, shape: Shape, values: list[Data], place: Pointer, cars: Clauses) -> list[Data]:
        made: list[tuple[Data, int]] = []
        for i, value in enumerate(values):
            for one in self._entry(shape, value, (*place, i), cars):
                made.append((one, i))
        if len(made) != len(values):
            numbers = [i for _, i in made]
            self._move(place, numbers)
            self.forms.led |= {(*place, at) for at, i in enumerate(numbers) if numbers.count(i) > 1}
        return [one for one, _ in made]

    def _entry(self, shape: Shape, value: Data, place: Pointer, cars: Clauses) -> list[Data]:
        if isinstance(value, str):
            return [name for name, _ in self._options(shape.leads, value, cars)] or [value]
        if isinstance(value, dict) and shape.leads and isinstance(value.get("part"), str):
            own = dividing.both(cars, dividing.clauses(value.get(WHEN)) or {}) or cars
            return [{**value, "part": name} for name, _ in self._options(shape.leads, value["part"], own)] or [value]
        if isinstance(value, dict) and shape.items:
            copies = self._thing(shape.items, value, place, cars)
            return [block for _, block in copies] if copies else [value]
        return [value]

    def _thing(self, shape: Shape, value: dict[str, Data], place: Pointer, cars: Clauses) -> list[tuple[str, Data]]:
        """A block for each form that a name of one thing in it leads to; none where it stays one. Their words and blocks."""
        own = dividing.both(cars, dividing.clauses(value.get(WHEN)) or {}) or cars
        made: list[tuple[str, Data]] = []
        for name, below in shape.fields.items():
            said = value.get(name)
            if not below.leads or below.is_list or not isinstance(said, str):
                continue
            options = self._options(below.leads, said, own)
            if len(options) == 1:
                value[name] = options[0][0]
            elif options and shape.varies:
                return [
                    (_words(said, other), {**copied(value), name: other, **_when(both)})
                    for other, where in options
                    if (both := dividing.both(dividing.clauses(value.get(WHEN)) or {}, where))
                ]
            elif options:
                return [(_words(said, other), {**copied(value), name: other}) for other, _ in options]
        self.block(shape, value, place, own)
        return made

    def _options(self, leads: str, said: str, cars: Clauses) -> Options:
        """The forms that a name can lead to in some cars; none where it leads to one thing."""
        found = [(name, where) for name, where in self._found(leads, said) if dividing.both(cars, where)]
        return found if [name for name, _ in found] != [said] else []

    def _found(self, leads: str, said: str) -> Iterator[tuple[str, Clauses]]:
        if leads in _SECTIONS:
            for section in _SECTIONS[leads]:
                yield from self.forms.known.get((section, said), ())
        elif leads in ("tether", "pin", "address"):
            yield from self._ways(leads, said)

    def _ways(self, leads: str, said: str) -> Iterator[tuple[str, Clauses]]:
        """What a path of names can lead to."""
        head = {"tether": ("parts",), "pin": ("connectors",), "address": ()}[leads]
        between = {"tether": "tethers", "pin": "pins", "address": ""}[leads]
        ways: list[tuple[Pointer, tuple[str, ...], Clauses]] = [(head, (), {})]
        for step in said.split("/"):
            after: list[tuple[Pointer, tuple[str, ...], Clauses]] = []
            for place, names, cars in ways:
                inner = (*place, between) if between and names else place
                for name, where in self.forms.known.get((*inner, step), [(step, {})]):
                    if (joint := dividing.both(cars, where)) is not None:
                        after.append(((*inner, name), (*names, name), joint))
            ways = after
        if len(ways) > 1:
            yield from (("/".join(names), cars) for _, names, cars in ways)

    def _spread_out(self, block: dict[str, Data], place: Pointer, copies: list[tuple[str, Data]]) -> None:
        """Copies of a thing stand in place of it, under ids of their own."""
        key, before = str(place[-1]), dict(block)
        block.clear()
        for name, value in before.items():
            if name != key:
                block[name] = value
                continue
            ids = [(f"{key}-{words}", copy) for words, copy in copies]
            self.forms.known[place] = [(one, dividing.clauses(copy.get(WHEN)) or {}) for one, copy in ids]
            for one, copy in ids:
                spot = (*place[:-1], one)
                if one in before:
                    self.forms.faults.append(
                        Complaint(place, message("spread/form-named-so", id=quoted(one)), key=True)
                    )
                block[one] = copy
                self.forms.led.add(spot)
                self.forms.base[spot] = self.forms.base.get(place, key)
                self.forms.places.carry(spot, place)
                self.forms.places.inherited.setdefault(spot, place)

    def _move(self, place: Pointer, now: list[int]) -> None:
        """The entries of a list stand at other numbers, some at several."""
        places, aside = self.forms.places, (*place, "before")
        for i in set(now):
            places.carry((*aside, i), (*place, i))
        for i, old in enumerate(now):
            places.carry((*place, i), (*aside, old))


def may_be_several(around: Shape, below: Shape) -> bool:
    """Whether what stands in a mapping can stand there several times: for some cars each, or under ids of the record's own."""
    return dividing.divides(around, below) or around.free_ids


def _when(cars: Clauses) -> dict[str, Data]:
    """The condition of some cars; none where only a side tells them from others."""
    typed = dividing.typed_when(cars)
    return {WHEN: typed} if typed else {}


def _words(said: str, form: str) -> str:
    """What the form of a name has more than the name."""
    pairs = zip(said.split("/"), form.split("/"), strict=True)
    return "-".join(other.removeprefix(one).lstrip("-") for one, other in pairs if one != other)
