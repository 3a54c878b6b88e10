"""What to order and to bring, as data and as text for a terminal."""

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.shopping import Item, Order
from undertrim.derive.procedure.planning import Target
from undertrim.publish.encoding import said
from undertrim.publish.facts import closed, duties, gear_card, names, steps, totals

Data = Mapping[str, Any]
WIDTH = 100
_CLOSING = "The maker's information, local codes and licensed practice come first."


def shop_data(vehicle: Vehicle, wanted: Sequence[Target], orders: Sequence[Order]) -> dict[str, Any]:
    """The lists as data, one for each group of cars that has the same."""
    facts = vehicle.record.vehicle
    made = {
        "vehicle": vehicle.address,
        "title": f"{facts.make} {facts.model}",
        "demo": vehicle.record.demo == "yes",
        "left_out": list(vehicle.stock.left_out),
        "jobs": [str(target) for target in wanted],
        "job_names": [names.job(vehicle.record, target) for target in wanted],
        "duties": _duties(vehicle, wanted, orders),
        "lists": [_order(vehicle, order) for order in orders],
    }
    return dict(said(made))


def _duties(vehicle: Vehicle, wanted: Sequence[Target], made: Sequence[Order]) -> list[dict[str, Any]]:
    """What the factory unit also does, where it goes, each once; what stops the job first."""
    cars = [car for order in made for car in order.cars] or [{}]
    every = duties.duties(vehicle.record, vehicle.address, vehicle.stock)
    places = {target.opening for target in wanted}
    found = [item for item in every if any(duties.going([item], place, car) for place in places for car in cars)]
    return sorted(found, key=lambda item: item["word"] != "STOP")


def _order(vehicle: Vehicle, order: Order) -> Data:
    return {
        "cars": [dict(car) for car in order.cars],
        "cars_words": names.kinds_of_car(vehicle.record, order.cars),
        "verdicts": [
            {
                "opening": line.opening.id,
                "opening_name": line.opening.name,
                "gear": line.fit.gear,
                "name": line.fit.name,
                "verdict": line.fit.kind,
                "headline": line.fit.headline,
                "functions": [f"{need.function.replace('-', ' ')}: {need.words}" for need in line.fit.needs if need.by != "wire"],
                "notes": list(line.fit.notes),
                "about": gear_card.of_fit(line.fit, vehicle.stock),
                "nearest": line.fit.nearest,
                "nearest_name": line.fit.nearest_name,
            }
            for line in order.lines
        ],
        "order": [_item(item) for item in order.order],
        "to_get": [_item(item) for item in order.to_get],
        "single_use": [steps.purchase(item) for item in order.single_use],
        "used_up": list(order.used_up),
        "tools": [totals.tool(item) for item in order.tools],
        "closed": [closed.said(opening, names) for opening, names in order.closed],
    }  # fmt: skip


def _item(item: Item) -> Data:
    return {"count": item.count, "what": item.what, "opening": item.opening}


def shop_text(data: Data) -> str:
    """The lists as text, ending in a newline."""
    lines = [line for entry in data["lists"] for line in _list(entry)]
    return "\n".join([*_head(data), *lines, "", _CLOSING, ""])


def _head(data: Data) -> Iterator[str]:
    yield f"{data['title']} ({data['vehicle']}): to order and to bring for {'; '.join(data['job_names'])}"
    if data["demo"]:
        yield "Demonstration data: this vehicle is invented."
    for address in data["left_out"]:
        yield f"Left out, its record has problems: {address}"
    for item in data["duties"]:
        yield from _wrapped(duties.line(item), "The factory unit also does: ", "    ")
        for words in item["conflicts"]:
            yield from _wrapped(words, "    ! ", "      ")


def _list(entry: Data) -> Iterator[str]:
    yield ""
    yield from _wrapped(f"For: {entry['cars_words']}" if entry["cars_words"] else "In every car asked for:", "", "  ")
    for words in entry["closed"]:
        yield from _wrapped(f"INSIDE: {words}", "  ", "      ")
    for verdict in entry["verdicts"]:
        yield from _wrapped(f"{verdict['opening_name']}: {verdict['name']} {verdict['headline']}", "  ", "      ")
        yield from (line for words in (*verdict["functions"], *verdict["notes"], *verdict["about"]) for line in _wrapped(words, "    - ", "      "))  # fmt: skip
        if verdict["nearest"]:
            yield f"    nearest in stock that fits: {verdict['nearest_name']}"
    yield from _block("To order", (f"{item['count']} × {item['what']}, {item['opening']}" for item in entry["order"]))
    yield from _block(
        "To get, not in stock", (f"{item['count']} × {item['what']}, {item['opening']}" for item in entry["to_get"])
    )
    yield from _block("Single-use parts of the car", (_single(item) for item in entry["single_use"]))
    yield from _block("Used up", entry["used_up"])
    yield from _block("Tools", (tool["name"] for tool in entry["tools"]))


def _single(item: Data) -> str:
    count = item["count"] if item["count"] is not None else "unknown number"
    return f"{count} × {item['what']} ({item['part']})"


def _block(title: str, entries: Any) -> Iterator[str]:
    listed = list(entries)
    if listed:
        yield f"  {title}:"
        for words in listed:
            yield from _wrapped(words, "    [ ] ", "        ")


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )
