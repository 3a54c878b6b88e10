"""All derived facts of one vehicle record."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.derive.procedure import running
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.choices import Choices, choices
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import SECTIONS
from undertrim.publish.encoding import said
from undertrim.publish.facts import (
    blockers,
    coverage,
    doubts,
    duties,
    evidence,
    expecting,
    fit,
    fit_page,
    joints,
    kits,
    ladders,
    meter,
    names,
    openings,
    phases,
    plugs,
    resting,
    runs,
    totals,
    wiring,
    words,
)
from undertrim.publish.facts import steps as step_facts
from undertrim.publish.facts.own_language import OwnLanguage
from undertrim.record.model import Connector, VehicleRecord
from undertrim.record.store import Entry
from undertrim.words import SaidError, Value, message

Facts = dict[str, Any]

FORMAT = 1
"""The version of what is published; `schema/published.schema.json` has the same and says when it rises."""


class Unplannable(SaidError):  # noqa: N818 - it names the state of the record
    """No procedure can be worked out for some opening of a record; `said` says why."""


def vehicle(entry: Entry, made: date | None = None, shelf: Stock = NOTHING) -> Facts:
    """The facts of a checked vehicle record. Raises Unplannable for one whose openings cannot all be planned.

    `made` is the day they are published, from which the age of the data is counted; without it no age is given. `shelf` is the gear
    in stock.
    """
    typed = entry.record
    assert isinstance(typed, VehicleRecord)
    record = reckoned(typed)
    planner = Planner(record)
    chosen = _choices(planner)
    known = Vehicle(record, entry.address, shelf, clearances())
    facts: Facts = said(
        {
            "format": FORMAT,
            "id": entry.id,
            "address": entry.address,
            "demo": record.demo == "yes",
            "lang": record.lang,
            "lang_words": OwnLanguage(record.lang),
            **_identity(record),
            "data_date": _data_date(record),
            "age": evidence.age(_data_date(record), made),
            "standing": evidence.standing(typed, entry.source.data),
            "conflicts": evidence.conflicts(typed),
            "disputed": doubts.marks(record, ("vehicle",)),
            "variants": [_variant(record, variant) for variant in cars.asked(record).values()],
            "targets": _targets(record),
            "blockers": blockers.blockers(record, entry.address, shelf),
            "openings": [
                {**openings.opening(record, item), **fit.fits(known, item), "form": fit_page.place(known, item)}
                for item in record.openings.values()
            ],
            "sections": [{"id": name, "title": step_facts.section_title(name)} for name in SECTIONS],
            "steps": _with_kits(known, _steps(record, chosen)),
            "plans": _plans(chosen),
            "totals": totals.totals(chosen.steps),
            "connectors": [
                {
                    **wiring.connector(record, item),
                    "drawn": plugs.plug(record, item),
                    "meter": meter.guide(record, item),
                    "expect": _expected(record, item),
                }
                for item in record.connectors.values()
            ],
            "joints": joints.joints(known),
            "ladders": ladders.ladders(record),
            "runs": runs.runs(record),
            "sound": [
                {"id": item.id, "conflicts": doubts.marks(record, ("sound", item.id))} for item in record.sound.values()
            ],
            "rest": resting.rest(record),
            "functions": [wiring.function(record, item) for item in record.functions.values()],
            "duties": duties.duties(record, entry.address, shelf),
            "restraints": [
                {"area": name, "items": list(area.restraints), "conflicts": doubts.marks(record, ("areas", name))}
                for name, area in record.areas.items()
                if area.restraints
            ],
            "coverage": coverage.summary(record),
            "evidence": evidence.pieces(record, entry.source.data, made),
        }
    )
    return facts


def _choices(planner: Planner) -> Choices:
    try:
        return choices(planner)
    except (Unreachable, TooTangled) as error:
        raise Unplannable(names.refusal(planner.record, error)) from error


def _identity(record: VehicleRecord) -> Facts:
    facts = record.vehicle
    years = facts.model_years
    first, last = (years.first, years.last) if years else (facts.built.from_.year, facts.built.to.year)
    span = f"{first}–{last}" if first != last else str(first)
    return {
        "make": facts.make,
        "model": facts.model,
        "phase": facts.phase,
        "title": f"{facts.make} {facts.model}",
        "years": span,
        "first_year": first,
        "last_year": last,
        "built_from": str(facts.built.from_),
        "built_to": str(facts.built.to),
        "built": message("vehicle/built", first=str(facts.built.from_), end=str(facts.built.to)),
        "built_words": message("vehicle/built-alone", first=str(facts.built.from_), end=str(facts.built.to)),
        "tell": facts.tell,
        "bodies": list(facts.bodies),
        "drive_sides": list(facts.drive_side),
        "also_called": list(facts.also_called),
        "high_voltage": facts.high_voltage,
        "forty_eight_volt": facts.forty_eight_volt,
        "follows": facts.follows,
        "follows_words": phases.before(record),
        "changed": phases.changed(record),
    }


def _data_date(record: VehicleRecord) -> str:
    """The newest date of any evidence; empty where there is none."""
    return max((item.on for item in record.evidence.values()), default="")


def _variant(record: VehicleRecord, variant: cars.AnyVariant) -> Facts:
    return {
        "id": variant.id,
        "ask": variant.ask,
        "conflicts": doubts.marks(record, ("variants", variant.id)),
        "choices": [
            {"id": choice.id, "label": choice.label, "tell": choice.tell} for choice in variant.choices.values()
        ],
    }


def _targets(record: VehicleRecord) -> list[Facts]:
    """Every opening at every side, with a short mark of capital letters that tells it from the others."""
    found = []
    marks: set[str] = set()
    for target in targets(record):
        opening = record.openings[target.opening]
        mark = _mark(target.opening, target.side, marks)
        marks.add(mark)
        found.append(
            {
                "id": str(target),
                "opening": target.opening,
                "side": target.side,
                "name": names.job(record, target),
                "mark": mark,
                "when": words.when(record, opening.when),
                "clauses": words.clauses(opening.when),
            }
        )
    return found


def _mark(opening: str, side: str, taken: set[str]) -> str:
    mark = "".join(word[0] for word in opening.split("-")).upper() + side[:1].upper()
    number = 2
    while mark in taken:
        mark = f"{mark.rstrip('0123456789')}{number}"
        number += 1
    return mark


def _steps(record: VehicleRecord, made: Choices) -> list[Facts]:
    """Every step with the cars and targets it belongs to."""
    with_it: dict[str, tuple[set[str], set[int]]] = {step.id: (set(), set()) for step in made.steps}
    for number, plans in enumerate(made.cars):
        visits: dict[tuple[str, ...], tuple[str, ...]] = {(target,): ids for target, ids in plans.singles.items()}
        visits |= {wanted: ids for wanted, ids in plans.sets.items() if len(wanted) > 1}
        for wanted, ids in visits.items():
            for name in ids:
                if len(wanted) == 1 or not any(name in plans.singles[target] for target in wanted):
                    with_it[name][0].update(wanted)
                    with_it[name][1].add(number)
    running_states = _states(made)
    return [
        {
            **step_facts.step(record, replace(step, state=running_states[step.id])),
            "targets": [target for target in made.cars[0].singles if target in with_it[step.id][0]],
            "when": _condition(record, made, with_it[step.id][1]),
        }
        for step in made.steps
    ]


def _states(made: Choices) -> dict[str, Mapping[str, str]]:
    """Battery and ignition beside each step, over every visit: one visit may have the battery off where another has it on."""
    steps = {step.id: step for step in made.steps}
    found: dict[str, dict[tuple[tuple[str, str], ...], None]] = {name: {} for name in steps}
    for plans in made.cars:
        for ids in (*plans.singles.values(), *plans.sets.values()):
            for name, now in zip(ids, running.states_of([steps[name] for name in ids]), strict=True):
                found[name][tuple(now.items())] = None
    return {name: running.agreed(map(dict, states)) for name, states in found.items()}


def _with_kits(known: Vehicle, made: list[Facts]) -> list[Facts]:
    """The steps, with how each kit that suits is built in the step that does it."""
    for step in made:
        if kits.building(step):
            step["kits"] = kits.built(known.record, known.address, known.stock, step["part"])
    return made


def _expected(record: VehicleRecord, plug: Connector) -> list[Facts]:
    """What a meter should show on each pin of a plug; nothing for one that nobody meters."""
    if meter.guide(record, plug) is None:
        return []
    found = ((pin, expecting.of_pin(pin)) for pin in plug.pins.values())
    return [
        {
            "id": pin.id,
            "function_words": wiring.function_name(pin.function),
            "conflicts": doubts.marks(record, ("connectors", plug.id, "pins", pin.id)),
            "lines": lines,
            "when": words.when(record, pin.when),
            "clauses": words.clauses(pin.when),
        }
        for pin, lines in found
        if lines
    ]


def _condition(record: VehicleRecord, made: Choices, numbers: set[int]) -> Value:
    """In words, the cars in which a step can occur; empty for all."""
    if len(numbers) == len(made.cars):
        return ""
    in_cars = [plans.car for number, plans in enumerate(made.cars) if number in numbers]
    return words.listed(*_narrowed(cars.variants(record), made, in_cars))


def _narrowed(known: Mapping[str, cars.AnyVariant], made: Choices, in_cars: list[Any]) -> Iterator[Value]:
    for name in made.cars[0].car:
        chosen = list(dict.fromkeys(car[name] for car in in_cars))
        if len(chosen) < len({plans.car[name] for plans in made.cars}):
            yield words.either(cars.label(known, name, choice) for choice in chosen)


def _plans(made: Choices) -> list[Facts]:
    """For each car: step numbers (places in `steps`) by target, and of every set that is not simply their sum."""
    place = {step.id: i for i, step in enumerate(made.steps)}
    return [
        {
            "car": dict(plans.car),
            "singles": {target: [place[step] for step in ids] for target, ids in plans.singles.items()},
            "sets": {"+".join(ids): [place[step] for step in listed] for ids, listed in plans.sets.items()},
        }
        for plans in made.cars
    ]
