"""Say which function of a wire the readings of a meter agree with, and what to measure next.

VEHICLE is a record's id (its file's name without the ending) or make/id, PLUG/PIN a plug of the record and a position in it, recorded or not; it
is left out for a wire on no recorded plug. A reading is a number, a unit and the state of the car: "12.6 V key off", "1.2 V AC radio on",
"3.6 ohm across the pair", "open brake off". Without a reading the answer is what to expect. With --ladder the readings are ohms of a button.
"""

import argparse
import sys
from collections.abc import Iterable
from typing import TypeVar

from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.derive import jobs
from undertrim.derive.wiring.circuits import circuit
from undertrim.derive.wiring.ends import called
from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.readings import Reading, ReadingError, read
from undertrim.publish.encoding import indented
from undertrim.publish.facts import doubts, words
from undertrim.publish.terminal.ladders import ladder_data, ladder_text
from undertrim.publish.terminal.meter import meter_text
from undertrim.publish.terminal.meter_answer import Question, meter_data
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import Connector, Ladder, Pin, VehicleRecord, When
from undertrim.record.nearness import suggestion
from undertrim.record.store import Entry
from undertrim.words import Items, Message, Value, WayOut, message, say

F = TypeVar("F", Connector, Ladder)


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("pin", metavar="PLUG/PIN", nargs="?", help="the wire (default: one on no recorded plug)")
    parser.add_argument(
        "--reading", action="append", default=[], metavar="TEXT", help="what the meter showed; may be repeated"
    )
    parser.add_argument("--ladder", metavar="NAME", help="a button ladder of the record, instead of PLUG/PIN")
    parser.add_argument(
        "--variant", action="append", default=[], metavar="NAME=CHOICE", help="which car it is; may be repeated"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Answer and print; exit 1 if the record cannot be relied on, or the plug is one that nobody meters."""
    if options.ladder and options.pin:
        raise Usage(say(message("meter/two-questions")))
    readings = tuple(map(_read, options.reading))
    entry = _entry(options)
    if not isinstance(entry.record, VehicleRecord) or entry.problems:
        wrong = message("meter/unreliable", path=str(entry.source.path), check=see_check())
        print(f"undertrim: {say(wrong)}", file=sys.stderr)
        return 1
    car = _chosen(entry.record, options.variant)
    if options.ladder:
        return _answer_ladder(entry, entry.record, readings, car, options)
    return _answer_pin(entry, entry.record, readings, car, options)


def _read(text: str) -> Reading:
    try:
        return read(text)
    except ReadingError as error:
        raise Usage(say(message("meter/unread", why=error.said, hint=WayOut(error.said)))) from error


def _entry(options: argparse.Namespace) -> Entry:
    place = workspace(options)
    try:
        return place.load(vehicle_file(place, options.vehicle))
    except NotFound as error:
        raise Usage(str(error)) from error


def _chosen(record: VehicleRecord, pairs: list[str]) -> dict[str, str]:
    found = chosen(pairs)
    try:
        jobs.car(record, found)
    except jobs.BadRequest as error:
        raise Usage(str(error)) from error
    return found


def _answer_pin(
    entry: Entry,
    record: VehicleRecord,
    readings: tuple[Reading, ...],
    car: dict[str, str],
    options: argparse.Namespace,
) -> int:
    plug, pin, wire = _wire(record, options.pin, car) if options.pin else (None, None, message("meter/no-plug"))
    if plug and _refused(record, plug):
        return 1
    question = Question(_title(entry, record), wire, pin, readings, _taken(record, plug))
    _print(options, meter_data(question), meter_text(question))
    return 0


def _taken(record: VehicleRecord, plug: Connector | None) -> tuple[Value, ...]:
    return tuple(doubts.unseen(record, ("connectors", plug.id))) if plug else ()


def _refused(record: VehicleRecord, plug: Connector) -> bool:
    """Whether nobody meters a plug; says so."""
    kind = circuit(record, plug)
    if kind != "ordinary":
        said = message("meter/nobody-meters", plug=called(plug), circuit=message(f"meter/circuit-{kind}"))
        print(f"undertrim: {say(said)}", file=sys.stderr)
    return kind != "ordinary"


def _wire(record: VehicleRecord, name: str, car: dict[str, str]) -> tuple[Connector, Pin | None, Value]:
    """The plug, the pin if the record has it in this car, and the wire in words. Raises Usage for an unknown plug."""
    plug_name, _, position = name.partition("/")
    plug = _form(record, record.connectors.values(), plug_name, car)
    if plug is None:
        raise Usage(say(_no_plug(record, plug_name)))
    if not position:
        raise Usage(say(message("meter/names-no-pin", name=name, plug=plug_name)))
    pin = plug.pins.get(position)
    if pin is None:
        return plug, None, message("meter/blank" if position in plug.blanks else "meter/not-in-record", wire=name)
    if not (plug.when.holds(car) and pin.when.holds(car)):
        return plug, None, message("meter/not-in-car", wire=name)
    colour = [pin.colour] if pin.colour else []
    said: tuple[Value, ...] = (name, *colour, *_only(record, plug.when, car), *_only(record, pin.when, car))
    return plug, pin, Items(said, "comma")


def _form(record: VehicleRecord, things: Iterable[F], name: str, car: dict[str, str]) -> F | None:
    """What a name means in this car; None where nothing goes by it. Raises Usage where cars that are left open have several."""
    named = [one for one in things if one.is_named(name)]
    here = [one for one in named if one.when.holds(car)] or named[:1]
    if len(here) > 1:
        forms = words.either(message("meter/form", id=one.id, cars=_apart(record, one)) for one in here)
        raise Usage(say(message("meter/which-form", name=name, forms=forms)))
    return here[0] if here else None


def _apart(record: VehicleRecord, one: Connector | Ladder) -> Value:
    """What tells one form of a thing from the others: its cars, and its side."""
    side = message(f"sides/{one.side}") if isinstance(one, Connector) and one.side else ""
    return Items(tuple(said for said in (words.when(record, one.when), side) if said), "comma")


def _names(things: Iterable[Connector | Ladder]) -> list[str]:
    return list(dict.fromkeys(one.written for one in things))


def _no_plug(record: VehicleRecord, name: str) -> Message:
    if not record.connectors:
        return message("meter/no-plugs", plug=name)
    hint = suggestion(name, _names(record.connectors.values()), message("meter/plugs"))
    return message("meter/no-such-plug", plug=name, hint=hint)


def _only(record: VehicleRecord, condition: When, car: dict[str, str]) -> list[Message]:
    """Which cars it is in, as far as that was left open."""
    open_ = condition.variants - set(car)
    return [message("meter/in-cars", cars=words.when(record, condition))] if open_ else []


def _answer_ladder(
    entry: Entry,
    record: VehicleRecord,
    readings: tuple[Reading, ...],
    car: dict[str, str],
    options: argparse.Namespace,
) -> int:
    ladder = _ladder(record, options.ladder, car)
    plug = record.connectors.get(ladder.pin.partition("/")[0])
    if plug and _refused(record, plug):
        return 1
    for reading in readings:
        _in_ohms(reading)
    taken = _taken(record, plug)
    _print(options, ladder_data(ladder, readings, taken), ladder_text(_title(entry, record), ladder, readings, taken))
    return 0


def _in_ohms(reading: Reading) -> None:
    """Raises Usage for a reading that tells nothing of a ladder."""
    if reading.kind not in ("ohms", "pair"):
        raise Usage(say(message("meter/not-in-ohms", reading=reading.text)))
    if not functions().states[reading.state].ohms:
        raise Usage(say(message("meter/power-on", reading=reading.text)))


def _ladder(record: VehicleRecord, name: str, car: dict[str, str]) -> Ladder:
    if not record.ladders:
        raise Usage(say(message("meter/no-ladder")))
    ladder = _form(record, record.ladders.values(), name, car)
    if ladder is None:
        hint = suggestion(name, _names(record.ladders.values()), message("meter/ladders"))
        raise Usage(say(message("meter/no-such-ladder", name=name, hint=hint)))
    if not ladder.when.holds(car):
        cars = words.when(record, ladder.when)
        raise Usage(say(message("meter/ladder-elsewhere", name=name, cars=cars)))
    return ladder


def _title(entry: Entry, record: VehicleRecord) -> Message:
    name = f"{record.vehicle.make} {record.vehicle.model}"
    return message("meter/car-demo" if record.demo == "yes" else "meter/car", name=name, address=entry.address)


def _print(options: argparse.Namespace, data: object, text: str) -> None:
    sys.stdout.write(indented(data) + "\n" if options.format == "json" else text)
