"""From what is asked for to a visit. What is not so is said, each thing with what would be; the rest still makes a visit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from undertrim.derive import cars, jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.procedure.planning import Target
from undertrim.derive.visit import choosing
from undertrim.derive.visit.asked import JOBS, SOME, Asked
from undertrim.derive.visit.between import Chosen, kinds
from undertrim.derive.visit.text import CHOICE, GEAR
from undertrim.derive.visit.visit import Visit
from undertrim.record.model import Job, Opening
from undertrim.record.nearness import suggestion
from undertrim.words import Items, Message, message, one_of, quoted


@dataclass(frozen=True, slots=True)
class Understood:
    """The visit that is asked for as far as it is so, and what is said of the rest; `absent` of openings that no such car has."""

    visit: Visit
    said: tuple[Message, ...]
    absent: tuple[Message, ...] = ()


class NotSo(jobs.BadRequest):
    """A visit that asks for what is not so; `every` says all of it."""

    def __init__(self, every: Sequence[Message]) -> None:
        super().__init__(every[0])
        self.every = tuple(every)


def visit(vehicle: Vehicle, asked: Asked, name: str = "") -> Visit:
    """The visit that is asked for. Raises NotSo."""
    found = understood(vehicle, asked, name)
    if found.said or found.absent:
        raise NotSo((*found.said, *found.absent))
    return found.visit


def understood(vehicle: Vehicle, asked: Asked, name: str = "") -> Understood:
    """The visit that is asked for, as far as it is so. `name` is what the vehicle is called where its id alone does not tell it."""
    reading = _Reading(vehicle, list(asked.said))
    reading.words(asked)
    reading.loose(asked)
    made = Visit(vehicle, reading.targets, reading.answers, reading.gear, reading.between, name)
    return Understood(made, tuple(dict.fromkeys(reading.said)), tuple(_absent(made)))


@dataclass(slots=True)
class _Reading:
    """One visit while it is read."""

    vehicle: Vehicle
    said: list[Message]
    targets: tuple[Target, ...] = ()
    answers: dict[str, str] = field(default_factory=dict)
    gear: dict[str, Gear] = field(default_factory=dict)
    between: dict[str, Chosen] = field(default_factory=dict)

    @property
    def _written(self) -> dict[str, Opening]:
        """Every id that names an opening, with the opening or the first of those that are written under it."""
        every = self.vehicle.record.openings
        return {**{one.written: one for one in reversed(every.values())}, **every}

    def _named_by(self, name: str) -> list[Opening]:
        """The openings worked at that an id names: one for each kind of car where it is written once for several."""
        worked = {target.job for target in self.targets}
        return [one for one in self.vehicle.record.openings.values() if one.id in worked and one.is_named(name)]

    def words(self, asked: Asked) -> None:
        """Which car, then the openings worked at in it, then gear: a kit suits or not by the gear and by the car."""
        words = [(*self._named(word), value) for word, value in asked.words]
        named = dict.fromkeys(name for name, role, _ in words if role not in ("", CHOICE))
        for name, role, value in words:
            if role == CHOICE:
                self._answer(name, value)
        self._jobs(asked.jobs or tuple(named))
        for name, role, value in sorted(words, key=_order):
            if role == GEAR:
                self._fitted(name, value)
            elif role not in ("", CHOICE):
                self._between(name, role, value)

    def _jobs(self, names: Sequence[str]) -> None:
        found: list[Target] = []
        for job in names:
            try:
                found += jobs.wanted(self.vehicle.record, [job], self.answers)
            except jobs.BadRequest as error:
                self.said.append(error.said)
        order = jobs.wanted(self.vehicle.record, dict.fromkeys(map(str, found)))
        self.targets = tuple(order)

    def _named(self, word: str) -> tuple[str, str]:
        """What a word names, and as what: a variant by `choice`, an opening by `gear` or a kind of what stands between. Empty for nothing: it is said then."""
        name, _, role = word.partition(".")
        variants = cars.variants(self.vehicle.record)
        if role in (CHOICE, GEAR):
            return name, role
        if role and name in self._written:
            return self._role(name, role)
        as_what = [CHOICE] * (name in variants) + [GEAR] * (name in self._written)
        if len(as_what) == 1 and not role:
            return name, as_what[0]
        self.said.append(self._unknown(word, as_what, role))
        return name, ""

    def _role(self, name: str, role: str) -> tuple[str, str]:
        """A kind of gear that may stand between there."""
        known = kinds(self._written[name])
        if role in known:
            return name, role
        hint = suggestion(role, [GEAR, *known], message("visit/kinds"))
        self.said.append(message("visit/no-kind", opening=name, kind=role, hint=hint))
        return name, ""

    def _unknown(self, word: str, as_what: Sequence[str], role: str) -> Message:
        name, _, side = word.partition("@")
        if side and name in self._written:
            return message("visit/gear-at-a-side", word=word, opening=name)
        if len(as_what) > 1 and not role:
            return message("visit/two-things", word=word, choice=f"{word}.{CHOICE}", gear=f"{word}.{GEAR}")
        known = [JOBS, *cars.variants(self.vehicle.record), *self._written]
        return message("visit/no-word", word=word, hint=suggestion(word, known, message("visit/words")))

    def _answer(self, name: str, value: str) -> None:
        try:
            jobs.car(self.vehicle.record, {name: value})
        except jobs.BadRequest as error:
            self.said.append(error.said)
        else:
            if self.answers.setdefault(name, value) != value:
                self.said.append(message("visit/said-twice", word=name, first=self.answers[name], second=value))

    def _fitted(self, name: str, value: str) -> None:
        """Gear into an opening that is worked at."""
        forms = self._named_by(name)
        if not forms:
            self.said.append(choosing.no_job(name, self._worked))
        elif value != SOME:
            self._keep(forms, choosing.gear(self.vehicle.stock, forms[0], value))

    def _keep(self, forms: Sequence[Opening], found: Gear | Message) -> None:
        if isinstance(found, Message):
            self.said.append(found)
            return
        for form in forms:
            first = self.gear.setdefault(form.id, found)
            if first is not found:
                said = message("visit/said-twice", word=form.written, first=first.id, second=found.id)
                self.said.append(said)

    @property
    def _worked(self) -> list[str]:
        """The openings worked at, by the ids they are written under."""
        every = self.vehicle.record.openings
        return list(dict.fromkeys(every[target.job].written for target in self.targets if target.job in every))

    def _between(self, name: str, kind: str, value: str) -> None:
        """What stands between at an opening that is worked at: what suits it there alone."""
        forms = self._named_by(name)
        if not forms:
            self.said.append(choosing.no_job(name, self._worked))
            return
        known = Vehicle(
            self.vehicle.record, self.vehicle.address, self.vehicle.stock, self.vehicle.usual, dict(self.gear)
        )
        found, said = choosing.between(known, forms, kind, value, cars.assignments(self.vehicle.record, self.answers))
        self.said += said
        for form in forms if not said else ():
            self.between[form.id] = {**self.between.get(form.id, {}), kind: found}

    def loose(self, asked: Asked) -> None:
        """Gear and kits of which nobody said for which opening they are."""
        for name in asked.gear:
            where = choosing.place(self.vehicle.stock, [self._written[one] for one in self._worked], name)
            if isinstance(where, Message):
                self.said.append(where)
            else:
                place, found = where
                self._keep(self._named_by(place), found)
        chosen: dict[str, list[str]] = {}
        for name in asked.kits:
            places = choosing.of_kit(self.vehicle, self._worked, name)
            if isinstance(places, Message):
                self.said.append(places)
            else:
                for place in places:
                    chosen.setdefault(place, []).append(name)
        for place, names in chosen.items():
            self._between(place, choosing.KIT, ",".join(names))


def _order(word: tuple[str, str, str]) -> int:
    """What goes in, then what stands between."""
    _, role, _ = word
    return 0 if role == GEAR else 1


def _absent(made: Visit) -> Iterator[Message]:
    """Says of what is worked at that no such car has it, and in which cars it is."""
    known, among = cars.variants(made.known.record), cars.assignments(made.known.record, made.answers)
    told = Items(tuple(cars.label(known, name, choice) for name, choice in made.answers.items()), "comma")
    absent: dict[str, list[Job]] = {}
    named = made.known.record.jobs
    for job in dict.fromkeys(named[target.job] for target in made.targets if target.job in named):
        if not any(job.when.holds(car) for car in among):
            absent.setdefault(job.written, []).append(job)
    for forms in absent.values():
        clauses = [clause for form in forms for clause in form.when.clauses]
        there = dict.fromkeys(f"{name}={choice}" for name, choices in clauses for choice in choices)
        yield message("visit/not-there", opening=forms[0].name, answers=told, there=one_of(*map(quoted, there)))
