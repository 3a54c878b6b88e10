"""What to order and to bring, as data and as text for a terminal."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.shopping import Item, Line, Order
from undertrim.derive.procedure.closed import why_closed
from undertrim.derive.procedure.planning import Target
from undertrim.publish.facts import doubts, duties, fitting, gear_card, names, steps, totals
from undertrim.publish.facts.shown_steps import Purchase
from undertrim.publish.facts.wiring import function_name
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Items, Value, message, say


@dataclass(frozen=True, slots=True)
class ShownVerdict:
    """The verdict on one piece of gear in one opening; `functions` are those that do not simply come by wire, `taken` says what of the opening another car lends."""

    opening: str
    opening_name: str
    gear: str
    name: str
    verdict: str
    headline: Value
    functions: Sequence[Value]
    notes: Sequence[Value]
    about: Sequence[Value]
    nearest: str
    nearest_name: str
    taken: Sequence[Value]


@dataclass(frozen=True, slots=True)
class ShownOrder:
    """The list for the kinds of car that have the same one; none where all have it. `taken` are the single-use parts that another car lends."""

    cars: Sequence[Mapping[str, str]]
    cars_words: Value
    verdicts: Sequence[ShownVerdict]
    order: Sequence[Item]
    to_get: Sequence[Item]
    single_use: Sequence[Purchase]
    taken: Sequence[Value]
    used_up: Sequence[Value]
    tools: Sequence[totals.ShownTool]
    closed: Sequence[Value]
    fitting: Value


@dataclass(frozen=True, slots=True)
class Shopping:
    """What to order and to bring for some jobs; `left_out` are the addresses of gear with problems."""

    vehicle: str
    title: str
    demo: bool
    left_out: Sequence[str]
    jobs: Sequence[str]
    job_names: Sequence[Value]
    duties: Sequence[duties.ShownDuty]
    lists: Sequence[ShownOrder]


def shop_data(vehicle: Vehicle, wanted: Sequence[Target], made: Sequence[Order]) -> Shopping:
    """The lists, one for each group of cars that has the same."""
    facts = vehicle.record.vehicle
    return Shopping(
        vehicle=vehicle.address,
        title=f"{facts.make} {facts.model}",
        demo=vehicle.record.demo == "yes",
        left_out=vehicle.stock.left_out,
        jobs=[str(target) for target in wanted],
        job_names=[names.job(vehicle.record, target) for target in wanted],
        duties=_duties(vehicle, wanted, made),
        lists=[_order(vehicle, order) for order in made],
    )


def _duties(vehicle: Vehicle, wanted: Sequence[Target], made: Sequence[Order]) -> list[duties.ShownDuty]:
    """What the factory unit also does, where it goes, each once; what stops the job first."""
    cars = [car for order in made for car in order.cars] or [{}]
    every = duties.duties(vehicle.record, vehicle.address, vehicle.stock)
    places = {target.job for target in wanted}
    found = [item for item in every if any(duties.going([item], place, car) for place in places for car in cars)]
    return sorted(found, key=lambda item: item.word != "STOP")


def _order(vehicle: Vehicle, order: Order) -> ShownOrder:
    return ShownOrder(
        cars=[dict(car) for car in order.cars],
        cars_words=names.kinds_of_car(vehicle.record, order.cars),
        verdicts=[_shown(vehicle, line) for line in order.lines],
        order=order.order,
        to_get=order.to_get,
        single_use=[steps.purchase(item) for item in order.single_use],
        taken=list(_taken(vehicle, order)),
        used_up=order.used_up,
        tools=[totals.tool(item) for item in order.tools],
        closed=[why_closed(opening, names) for opening, names in order.closed],
        fitting=fitting.said(order.fitting),
    )


def _shown(vehicle: Vehicle, line: Line) -> ShownVerdict:
    return ShownVerdict(
        opening=line.opening.id,
        opening_name=line.opening.name,
        gear=line.fit.gear,
        name=line.fit.name,
        verdict=line.fit.kind,
        headline=line.fit.headline,
        functions=[_function(need) for need in line.fit.needs if need.by != "wire"],
        notes=line.fit.notes,
        about=gear_card.of_fit(line.fit, vehicle.stock),
        nearest=line.fit.nearest,
        nearest_name=line.fit.nearest_name,
        taken=doubts.unseen(vehicle.record, ("openings", line.opening.id)),
    )


def _taken(vehicle: Vehicle, order: Order) -> Iterator[Value]:
    """The parts whose single-use pieces nobody has counted on this car."""
    for part, place in {item.part: item.place for item in order.single_use if item.place}.items():
        for said in doubts.unseen(vehicle.record, place):
            yield message("shopping/taken", part=part, said=said)


def _function(need: Need) -> Value:
    return message("fit-shown/function", name=function_name(need.function), where=need.words)


def shop_text(data: Shopping) -> str:
    """The lists as text, ending in a newline."""
    lines = [line for entry in data.lists for line in _list(entry)]
    return "\n".join([*_head(data), *lines, "", closing(), ""])


def _head(data: Shopping) -> Iterator[str]:
    jobs = Items(tuple(data.job_names), "semicolon")
    yield say(message("shopping/title", vehicle=data.title, address=data.vehicle, jobs=jobs))
    if data.demo:
        yield say(message("vehicle-page/demo"))
    for address in data.left_out:
        yield say(message("fit-shown/left-out", address=address))
    for item in data.duties:
        yield from wrapped(
            message("shopping/also-does", duty=duties.line(item.name, item.kept_words, item.when)), "", "    "
        )
        yield from _doubtful(item.conflicts)


def _list(entry: ShownOrder) -> Iterator[str]:
    yield ""
    cars = entry.cars_words
    yield from wrapped(message("plan/for", cars=cars) if cars else message("joint/every-car"), "", "  ")
    for words in entry.closed:
        yield from wrapped(message("fit-shown/inside", why=words), "  ", "      ")
    for verdict in entry.verdicts:
        yield from _verdict(verdict)
    if entry.fitting:
        yield from wrapped(message("plan/fitting", time=entry.fitting), "  ", "      ")
    yield from _block("to-order", map(_counted, entry.order))
    yield from _block("to-get", map(_counted, entry.to_get))
    yield from _block("single-use", (_single(item) for item in entry.single_use))
    yield from _doubtful(entry.taken)
    yield from _block("used-up", entry.used_up)
    yield from _block("tools", (tool.name for tool in entry.tools))


def _verdict(verdict: ShownVerdict) -> Iterator[str]:
    values = {"opening": verdict.opening_name, "gear": verdict.name, "headline": verdict.headline}
    yield from wrapped(message("shopping/verdict", **values), "  ", "      ")
    yield from _doubtful(verdict.taken)
    for words in (*verdict.functions, *verdict.notes, *verdict.about):
        yield from wrapped(words, "    - ", "      ")
    if verdict.nearest:
        yield f"    {say(message('fit-shown/nearest', name=verdict.nearest_name))}"


def _doubtful(said: Iterable[Value]) -> Iterator[str]:
    for words in said:
        yield from wrapped(words, "    ! ", "      ")


def _counted(item: Item) -> Value:
    return message("shopping/item", number=item.count, what=item.what, opening=item.opening)


def _single(item: Purchase) -> Value:
    if item.count is None:
        return message("shopping/single-unknown", what=item.what, part=item.part)
    return message("plan/purchase", number=item.count, what=item.what, part=item.part)


def _block(title: str, entries: Iterable[Value]) -> Iterator[str]:
    listed = list(entries)
    if listed:
        yield f"  {say(message(f'shopping/{title}'))}"
        for words in listed:
            yield from wrapped(words, "    [ ] ", "        ")
