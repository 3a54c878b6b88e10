"""One visit as data: the steps for chosen jobs and car with their totals. Where the car is left open, every kind of car is covered."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from undertrim.derive import cars, jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.fitting import Fitting
from undertrim.derive.fit.stock import NOTHING, Stock
from undertrim.derive.procedure import running
from undertrim.derive.procedure.planning import Procedure, Target
from undertrim.derive.procedure.steps import Step
from undertrim.derive.visit.visit import Visit
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import blockers, fitting, kits, names, totals, words
from undertrim.publish.facts import steps as step_facts
from undertrim.publish.facts.kits import KitWork
from undertrim.publish.facts.shown_visit import OpenChoice, OpenVariant, ShownFitting, ShownVisit, TakenRoute, VisitStep
from undertrim.record.model import VehicleRecord, When
from undertrim.record.own_language import OwnLanguage
from undertrim.words import message


def visit(
    record: VehicleRecord, address: str, wanted: Sequence[Target], fixed: Mapping[str, str], shelf: Stock = NOTHING
) -> Published:
    """The procedure for openings and a car of a record, all gear left open: see `of`."""
    return of(Visit(Vehicle(record, address, shelf, clearances()), tuple(wanted), dict(fixed)))


def of(made: Visit) -> Published:
    """The procedure for a visit, in the language of the reader.

    Raises Unreachable when an opening cannot be reached, TooTangled when its routes interlock too much, and BadRequest for an opening
    that no such car has or for cars whose steps stand in no common order.
    """
    # Long because it is one table: what a visit says, a line each.
    record, address, wanted, fixed, plans = made.record, made.address, made.targets, made.car, made.plans
    _refuse_absent(record, wanted, plans, fixed)
    shown = ShownVisit(
        vehicle=address,
        title=f"{record.vehicle.make} {record.vehicle.model}",
        demo=record.demo == "yes",
        lang_words=OwnLanguage(record.lang),
        jobs=[str(target) for target in wanted],
        job_names=[names.job(record, target) for target in wanted],
        closed=list(dict.fromkeys(str(target) for plan in plans for target, _ in plan.closed)),
        variant=dict(fixed),
        variant_words=names.car(record, fixed),
        open_variants=_open(record, plans),
        blockers=blockers.of_visit(made),
        routes=_routes(plans),
        steps=[_step(record, step, plans, fixed, list(_kits(step, made))) for step in made.steps],
        cars=totals.of_cars(record, made.totals),
        fitting=list(_fitting(made)),
    )
    found: Published = said(shown)
    return found


def _kits(step: Step, made: Visit) -> Iterator[KitWork]:
    """How each kit is built up in the cars that the visit covers, where it is this step that tells it: with gear chosen, the kits it goes in with."""
    used = _used(made, step.part) if step.builds else set()
    for item in kits.built(made.record, made.address, made.vehicle.shelf(step.part), step.part) if step.builds else ():
        if (used is None or item.id in used) and _applies(item.clauses, made.car):
            yield replace(item, lines=[line for line in item.lines if _applies(line.clauses, made.car)])


def _fitting(made: Visit) -> Iterator[ShownFitting]:
    """How long the gear takes, for each group of cars that has the same list to order."""
    told: dict[Fitting, list[Mapping[str, str]]] = {}
    for order in made.orders if made.gear else ():
        told.setdefault(order.fitting, []).extend(order.cars)
    for found, among in told.items():
        if not fitting.said(found):
            continue  # nothing is fitted in these
        kinds = names.kinds_of_car(made.record, among) if len(told) > 1 else ""
        yield ShownFitting(kinds, found.minutes, [piece.id for piece in found.unsaid], fitting.said(found))


def _used(made: Visit, opening: str) -> set[str] | None:
    """The ids of what stands between with the gear chosen for an opening; None where it is left open, so that all that suit may be used."""
    return {item.id for item in made.parts(made.record.openings[opening])} if opening in made.gear else None


def _refuse_absent(
    record: VehicleRecord, wanted: Sequence[Target], plans: Sequence[Procedure], fixed: Mapping[str, str]
) -> None:
    known = {target for plan in plans for target in (*plan.targets, *(target for target, _ in plan.closed))}
    missing = [names.job(record, target) for target in wanted if target not in known]
    if missing:
        car = names.car(record, fixed) or message("jobs/any-choice")
        raise jobs.BadRequest(message("jobs/no-car", car=car, job=missing[0]))


def _applies(clauses: words.Clauses, car: Mapping[str, str]) -> bool:
    return When(tuple((name, tuple(choices)) for name, choices in clauses.items())).holds(car)


def _open(record: VehicleRecord, plans: Sequence[Procedure]) -> list[OpenVariant]:
    """The variants that were not chosen and make a difference to these jobs."""
    if len(plans) < 2:
        return []
    asked = cars.asked(record)
    names = [name for name in plans[0].car if len({plan.car[name] for plan in plans}) > 1]
    return [
        OpenVariant(name, asked[name].ask, [OpenChoice(c.id, c.label, c.tell) for c in asked[name].choices.values()])
        for name in names
        if _matters(name, plans)
    ]


def _matters(name: str, plans: Sequence[Procedure]) -> bool:
    """Whether two plans that differ in this variant alone have different steps."""
    alike: dict[tuple[str, ...], tuple[Step, ...]] = {}
    for plan in plans:
        rest = tuple(choice for key, choice in plan.car.items() if key != name)
        if alike.setdefault(rest, plan.steps) != plan.steps:
            return True
    return False


def _routes(plans: Sequence[Procedure]) -> list[TakenRoute]:
    """Where one of several routes was taken: the part, the route's name, for which car."""
    found = []
    for plan in plans:
        for (node, choice), route in plan.selection.routes.items():
            name = node.split("@")[0]
            routes = list(plan.record.parts[name].after_any[choice])
            found.append(TakenRoute(node, routes[route], routes, dict(plan.car)))
    return found


def _step(
    record: VehicleRecord,
    step: Step,
    plans: Sequence[Procedure],
    fixed: Mapping[str, str],
    built: Sequence[KitWork],
) -> VisitStep:
    """A step with the cars it is for; its lines are those of the cars the visit covers."""
    with_it = [plan for plan in plans if any(item.id == step.id for item in plan.steps)]
    clauses = _narrowing(plans, with_it)
    cautions = tuple(item for item in step.cautions if any(item.when.holds(plan.car) for plan in with_it))
    now = running.agreed(item.state for plan in with_it for item in plan.steps if item.id == step.id)
    shown = step_facts.step(record, replace(step, cautions=cautions, state=now))
    fasteners = [line for line in shown.fasteners if _applies(line.clauses, fixed)]
    tethers = [line for line in shown.tethers if _applies(line.clauses, fixed)]
    cars_words = words.beside(record, When(tuple((n, tuple(c)) for n, c in clauses.items())), step)
    return VisitStep(replace(shown, fasteners=fasteners, tethers=tethers), cars_words, clauses, built)


def _narrowing(plans: Sequence[Procedure], with_it: Sequence[Procedure]) -> dict[str, list[str]]:
    found = {}
    for name in plans[0].car:
        chosen = list(dict.fromkeys(plan.car[name] for plan in with_it))
        if len(chosen) < len({plan.car[name] for plan in plans}):
            found[name] = chosen
    return found
