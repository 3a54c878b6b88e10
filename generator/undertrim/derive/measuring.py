"""What to measure or look up next, the most useful first, as messages that a person can act on."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive import coverage, mirroring
from undertrim.derive.evidence import taken
from undertrim.derive.fit import duty_kinds
from undertrim.derive.required_facts import lacking
from undertrim.derive.wiring.leads import named
from undertrim.record.model import Blank, Connector, Duty, FunctionFact, Opening, Part, SoundSystem, VehicleRecord
from undertrim.words import Items, Value, message, quoted

SAFETY, MISSING, DIMENSION, SOUND, FUNCTION, DUTY, SIDE = KINDS = (
    "safety",
    "missing",
    "dimension",
    "sound",
    "function",
    "duty",
    "side",
)
"""In the order of their use."""


@dataclass(frozen=True, slots=True)
class Task:
    """One thing to find out: its kind (one of KINDS), the place in the record it is for, and what to do."""

    kind: str
    place: str
    words: Value


def next_to_measure(record: VehicleRecord) -> tuple[Task, ...]:
    """Everything that is known to be unknown: safety, missing openings, dimensions, what drives the speakers, functions, duties, sides, in this order."""
    return (
        *_restraint(record),
        *(task for opening in record.openings.values() for task in _facts(record, opening, safety=True)),
        *_voltage(record),
        *_forty_eight(record),
        *_missing(record),
        *(task for opening in record.openings.values() for task in _facts(record, opening, safety=False)),
        *_taken(record),
        *_sound(record),
        *_functions(record),
        *_duties(record),
        *_sides(record),
    )


def _restraint(record: VehicleRecord) -> Iterator[Task]:
    facts = record.restraint
    if facts and facts.fitted == "no":
        return
    if facts is None or facts.wait is Blank.UNKNOWN:
        yield Task(SAFETY, "restraint/wait", message("measuring/wait"))
    if facts is None or facts.memory_keeper == "unknown":
        yield Task(SAFETY, "restraint/memory_keeper", message("measuring/memory-keeper"))
    if facts is None or facts.read_faults_first == "unknown":
        yield Task(SAFETY, "restraint/read_faults_first", message("measuring/faults-first"))


def _voltage(record: VehicleRecord) -> Iterator[Task]:
    """Whether there is high voltage, else how near it comes: once for an area, or for what has none."""
    if record.vehicle.high_voltage == "unknown":
        yield Task(SAFETY, "vehicle/high_voltage", message("measuring/high-voltage"))
    if record.vehicle.high_voltage == "yes":
        things: list[Part | Opening] = [*record.parts.values(), *record.openings.values()]
        near = (_whereabouts(thing) for thing in things if record.high_voltage(thing) == "unknown")
        for place, name in dict.fromkeys(near):
            yield Task(SAFETY, f"{place}/high_voltage", message("measuring/near-voltage", place=name))


def _forty_eight(record: VehicleRecord) -> Iterator[Task]:
    """Whether there is a 48 V net, where somebody has left it open, and where a known one is."""
    if record.vehicle.forty_eight_volt == "unknown":
        yield Task(SAFETY, "vehicle/forty_eight_volt", message("measuring/48-volt"))
    if record.vehicle.forty_eight_volt == "yes" and not any(area.forty_eight_volt for area in record.areas.values()):
        yield Task(SAFETY, "areas", message("measuring/48-volt-parts"))


def _whereabouts(thing: Part | Opening) -> tuple[str, Value]:
    """Where its high voltage would be recorded, and what to call that."""
    if thing.area and not thing.high_voltage:
        return f"areas/{thing.area}", message("measuring/area", area=message(f"areas/{thing.area}"))
    return f"{'parts' if isinstance(thing, Part) else 'openings'}/{thing.id}", quoted(thing.name)


def _missing(record: VehicleRecord) -> Iterator[Task]:
    for name, rows in coverage.matrix(record).missing.items():
        where = Items(tuple(row.label for row in rows), "either")
        words = message("measuring/missing", opening=record.openings[name].name, car=where)
        yield Task(MISSING, f"openings/{name}/when", words)


def _facts(record: VehicleRecord, opening: Opening, *, safety: bool) -> Iterator[Task]:
    kind = SAFETY if safety else DIMENSION
    for fact in lacking(record, opening):
        if fact.safety == safety:
            yield Task(kind, f"openings/{opening.id}/{fact.key}", fact.to_do)


def _taken(record: VehicleRecord) -> Iterator[Task]:
    """Openings and plugs that were seen on another car, and not on this one."""
    things: list[tuple[str, Opening | Connector]] = [
        *(("openings", opening) for opening in record.openings.values()),
        *(("connectors", plug) for plug in record.connectors.values()),
    ]
    for section, thing in things if not taken.is_seen(record) else ():
        if unseen := taken.unseen(record, section, thing.id):
            yield Task(DIMENSION, f"{section}/{thing.id}", message("measuring/taken", thing=thing.name, unseen=unseen))


def _sound(record: VehicleRecord) -> Iterator[Task]:
    """What a new speaker or receiver is held against, and nobody recorded of what drives the speakers."""
    if not record.sound and any(opening.sounds for opening in record.openings.values()):
        yield Task(SOUND, "sound", message("measuring/sound"))
    for item in record.sound.values():
        place = f"sound/{item.id}"
        if item.output == "unknown":
            yield Task(SOUND, f"{place}/output", _where(record, item, message("measuring/output")))
        if item.least_load in (None, Blank.UNKNOWN):
            load = message("measuring/load-amplifier") if item.amplifier else message("measuring/load-radio")
            yield Task(SOUND, f"{place}/least_load", _where(record, item, load))
        if item.amplifier and item.turn_on in ("", "unknown"):
            yield Task(SOUND, f"{place}/turn_on", _where(record, item, message("measuring/turn-on")))


def _functions(record: VehicleRecord) -> Iterator[Task]:
    for item in record.functions.values():
        if item.by == "unknown":
            words = message("measuring/function", function=named(item.of))
            yield Task(FUNCTION, f"functions/{item.id}", _where(record, item, words))


def _duties(record: VehicleRecord) -> Iterator[Task]:
    for item in record.duties.values():
        if item.kept_by == "unknown":
            words = message("measuring/duty", duty=duty_kinds.named(item.id))
            yield Task(DUTY, f"duties/{item.id}", _where(record, item, words))


def _sides(record: VehicleRecord) -> Iterator[Task]:
    """What must be asked in cars of a drive side that the record covers and its facts were not taken on."""
    for drive_side in record.vehicle.drive_side:
        for fact in mirroring.mirrored(record, drive_side):
            if fact.there is None and fact.fact != "text":
                yield Task(SIDE, f"{fact.place}/mirrors", message(f"measuring/in-{drive_side}", ask=fact.ask))


def _where(record: VehicleRecord, item: FunctionFact | Duty | SoundSystem, words: Value) -> Value:
    """The words with the cars they are about, where those are not all."""
    cars = tuple(coverage.label(record, {name: choice}) for name, choices in item.when.clauses for choice in choices)
    return message("measuring/where", what=words, cars=Items(cars, "comma")) if cars else words
