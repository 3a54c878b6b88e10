"""The forms in which things of a record stand in its whole, one for each kind of car, while it is spread (`dividing.py`)."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace

from undertrim.record import blaming, car_cells, dividing
from undertrim.record.car_cells import Cell
from undertrim.record.complaint import Complaint
from undertrim.record.dividing import WHEN, Clauses, Fact
from undertrim.record.places import Places
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer
from undertrim.words import Message, message

Telling = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Form:
    """A thing as it is in one kind of car; `whens` are the places at which those cars were typed."""

    id: str
    block: Data
    typed: Pointer
    cars: Clauses
    whens: tuple[Pointer, ...]
    told_by: tuple[tuple[str, str], ...] = ()
    """The choices, each with its variant, that tell its cars from those of the other forms."""

    @property
    def name(self) -> str:
        """The id with those choices."""
        return "-".join((self.id, *(choice for _, choice in self.told_by)))


@dataclass(slots=True)
class Forms:
    """What stands in several forms so far: their ids and cars by the place that the thing would have."""

    places: Places
    data: Data
    faults: list[Complaint]
    implied: dict[str, dict[str, str]]
    """The choices of the questions that follow from what the record says of the vehicle."""
    around: Clauses = field(default_factory=dict)
    """The cars of the forms around what is being spread, and of the conditions typed there."""
    typed_around: Clauses = field(default_factory=dict)
    """The cars of those conditions alone."""
    known: dict[Pointer, list[tuple[str, Clauses]]] = field(default_factory=dict)
    base: dict[Pointer, str] = field(default_factory=dict)
    led: set[Pointer] = field(default_factory=set)
    """What stands in several forms only because of what it names."""
    named_for: dict[Pointer, tuple[str, ...]] = field(default_factory=dict)
    """The variants whose choices stand behind the name of a form."""

    @property
    def ids(self) -> dict[Pointer, tuple[str, ...]]:
        """The ids of all forms by the place of the thing."""
        return {place: tuple(name for name, _ in forms) for place, forms in self.known.items()}

    def of(self, around: Shape, shape: Shape, value: Data, typed: Pointer, base: str = "") -> list[Form] | None:
        """The forms of what stands in a list or under an id; None where nothing in it differs."""
        if not dividing.divides(around, shape) or not dividing.facts(shape, value, typed):
            return None
        own = value.get(WHEN) if isinstance(value, dict) else None
        cars = dividing.both(self.around, dividing.clauses(own) or {}) or self.around
        whens = ((own.typed if isinstance(own, dividing.Picked) else (*typed, WHEN)),) if own else ()
        return list(self._forms(shape, Form(base, value, typed, cars, whens)))

    def _forms(self, shape: Shape, whole: Form) -> Iterator[Form]:
        known = {**self._choices(), **_sides(shape, whole.block)}
        found = tuple(_declared(fact, known) for fact in dividing.facts(shape, whole.block, whole.typed))
        if not found:
            yield whole
            return
        cars = car_cells.told_apart(found, whole.cars, known)
        here = car_cells.told_apart(found, dividing.both(self.typed_around, self._own(whole)) or {}, known)
        if cars is None or here is None:
            self.tell(found[0].typed, message("spread/too-many-cars"), key=True)
            return
        for fact in found:
            blaming.blame(self.tell, self.places.source, fact, here, known)
        others = car_cells.cells(found, cars)
        for cell in others:
            if form := self._form(shape, whole, found, cell, car_cells.telling(cell, cars)):
                absent = [other.cars for other in others if other is not cell]
                yield from self._forms(shape, _not_in(shape, form, absent))

    def _form(self, shape: Shape, whole: Form, found: tuple[Fact, ...], cell: Cell, telling: Telling) -> Form | None:
        block, typed = dividing.formed(whole.block, found, cell.picks), whole.typed
        if isinstance(block, dividing.Picked):
            block, typed = block.value, block.typed
        cars = dividing.both(whole.cars, cell.cars)
        if block is None or cars is None:
            return None
        spots = (fact.entries[pick].stands for fact, pick in zip(found, cell.picks, strict=True) if pick is not None)
        whens = (*((*spot, WHEN) for spot in spots), *whole.whens)
        return Form(whole.id, block, typed, cars, whens, (*whole.told_by, *telling))

    def _own(self, whole: Form) -> Clauses:
        return dividing.clauses(whole.block.get(WHEN)) or {} if isinstance(whole.block, dict) else {}

    def _choices(self) -> Clauses:
        """The choices of every question about the car, as typed."""
        variants = self.data.get("variants")
        known: Clauses = {}
        for name, variant in variants.items() if isinstance(variants, dict) else ():
            choices = variant.get("choices") if isinstance(variant, dict) else None
            known[name] = list(choices) if isinstance(choices, dict) else []
        for name, entries in self.implied.items():
            known.setdefault(name, list(entries))
        return known

    # What is wrong with a list of values

    def undivided(self, shape: Shape) -> Data:
        """Tell of each fact that differs where nothing around it can have a `when`; the record with one of its values instead."""
        found = dividing.facts(shape, self.data, ())
        for fact in found:
            self.tell(fact.typed, message("spread/cannot-differ", field=blaming.field(fact)))
        return dividing.without(self.data, found)

    def tell(self, typed: Pointer, said: Message, *, key: bool = False) -> None:
        """Something is wrong at a place as typed."""
        complaint = Complaint(typed, said, key=key, stays=True, typed=True)
        if complaint not in self.faults:
            self.faults.append(complaint)

    # Where they stand

    def note(self, place: Pointer, forms: list[Form]) -> None:
        """A thing stands in these forms."""
        self.known[place] = [(form.name, form.cars) for form in forms]
        for form in forms:
            self.base[(*place[:-1], form.name)] = str(place[-1])

    def label(self, made: dict[str, Data], place: Pointer, forms: list[Form]) -> None:
        """Openings of one name, of which a list shows all, have the labels of their cars behind it."""
        things = [(made[form.name], form) for form in forms if isinstance(made.get(form.name), dict)]
        names = [thing.get("name") for thing, _ in things]
        for thing, form in things if len(set(map(str, names))) < len(names) else ():
            words = [_label(self.data, self.implied, variant, choice) for variant, choice in form.told_by]
            if words and isinstance(thing.get("name"), str):
                thing["name"] = f"{thing['name']} ({', '.join(words)})"
                told = tuple(dict.fromkeys(variant for variant, _ in form.told_by))
                self.named_for[(*place[:-1], form.name)] = told

    def standing(self, place: Pointer) -> Iterator[Pointer]:
        """The places at which something stands in the end: those of its forms, or its own."""
        for name, _ in self.known.get(place, [(str(place[-1]), {})]):
            spot = (*place[:-1], name)
            yield from [place] if spot == place else self.standing(spot)

    @contextmanager
    def within(self, cars: Clauses, typed: Clauses) -> Iterator[None]:
        """What is spread meanwhile stands inside a block of these cars, and of these as typed."""
        before = self.around, self.typed_around
        self.around = dividing.both(self.around, cars) or cars
        self.typed_around = dividing.both(self.typed_around, typed) or typed
        yield
        self.around, self.typed_around = before

    def say_cars(self, made: dict[str, Data], place: Pointer, form: Form) -> None:
        """The cars of a form, as far as what is around it does not say them; they stand where they were typed."""
        known = self.places.source
        cars = {name: said for name, said in form.cars.items() if not set(said) >= set(self.around.get(name, (None,)))}
        made.pop(WHEN, None)
        whens = form.whens or (form.typed,)
        self._say_side(made, place, cars.pop(dividing.BY_SIDE, []), whens)
        if not cars:
            return
        made[WHEN] = dividing.typed_when(cars)
        self.places.stand((*place, WHEN), known.position(whens[0], key=True))
        for variant, said in cars.items():
            spot = next((one for one in whens if (*one, variant) in known.values), whens[0])
            for step in ((), *((i,) for i in range(len(said)))):
                self.places.stand((*place, WHEN, variant, *step), known.position((*spot, variant)))

    def _say_side(self, made: dict[str, Data], place: Pointer, side: list[str], whens: tuple[Pointer, ...]) -> None:
        """The side of a form; it stands where the first value for that side was typed."""
        if len(side) == 1 and dividing.SIDE not in made:
            made[dividing.SIDE] = side[0]
            spots = ((*when[:-1], dividing.SIDE) for when in whens)
            spot = next((one for one in spots if one in self.places.source.values), whens[0])
            self.places.stand((*place, dividing.SIDE), self.places.source.position(spot))


def _sides(shape: Shape, block: Data) -> Clauses:
    """The sides on which a thing can be: that which it says, else both; none where it has no side."""
    if not shape.by_side:
        return {}
    said = block.get(dividing.SIDE) if isinstance(block, dict) else None
    return {dividing.BY_SIDE: [said] if said in dividing.SIDES else list(dividing.SIDES)}


def _not_in(shape: Shape, form: Form, absent: list[Clauses]) -> Form:
    """A form that says, where its kind of thing can, that cars with another form do not have it."""
    if "not_in" not in shape.fields or not absent or not isinstance(form.block, dict):
        return form
    said = form.block.get("not_in", [])
    typed = [*(said if isinstance(said, list) else [said]), *map(dividing.typed_when, absent)]
    return replace(form, block={**form.block, "not_in": typed})


def _declared(fact: Fact, known: Clauses) -> Fact:
    """A fact in which a value is for no cars where its condition asks what the record does not know."""
    entries = (
        entry
        if all(set(said) <= set(known.get(name, ())) for name, said in (entry.cars or {}).items())
        else replace(entry, cars=None)
        for entry in fact.entries
    )
    return replace(fact, entries=tuple(entries))


def _label(data: Data, implied: dict[str, dict[str, str]], variant: str, choice: str) -> str:
    """What a record calls a choice, in whichever form it is typed; its id where it does not say."""
    for step in ("variants", variant, "choices", choice):
        data = data.get(step) if isinstance(data, dict) else None
    if isinstance(data, list):
        data = data[0] if data else None  # the label stands first in the short form
    elif isinstance(data, dict):
        data = data.get("label")
    return data if isinstance(data, str) else implied.get(variant, {}).get(choice, choice)
