"""What to measure or look up next, the most useful first, in words that a person can act on."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive import coverage, mirroring
from undertrim.derive.wanted import lacking
from undertrim.derive.wiring.leads import named
from undertrim.record.model import Blank, Duty, FunctionFact, Opening, Part, SoundSystem, VehicleRecord
from undertrim.words import say

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
    words: str


def next_to_measure(record: VehicleRecord) -> tuple[Task, ...]:
    """Everything that is known to be unknown: safety, missing openings, dimensions, what drives the speakers, functions, duties, sides, in this order."""
    return (
        *_restraint(record),
        *(task for opening in record.openings.values() for task in _facts(record, opening, safety=True)),
        *_voltage(record),
        *_forty_eight(record),
        *_missing(record),
        *(task for opening in record.openings.values() for task in _facts(record, opening, safety=False)),
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
        words = "look up the maker's wait between battery off and touching restraint wiring"
        yield Task(SAFETY, "restraint/wait", words)
    if facts is None or facts.memory_keeper == "unknown":
        yield Task(SAFETY, "restraint/memory_keeper", "look up whether the maker forbids a memory keeper")
    if facts is None or facts.read_faults_first == "unknown":
        words = "look up whether stored restraint faults must be read before the battery goes off"
        yield Task(SAFETY, "restraint/read_faults_first", words)


def _voltage(record: VehicleRecord) -> Iterator[Task]:
    """Whether there is high voltage, else how near it comes: once for an area, or for what has none."""
    if record.vehicle.high_voltage == "unknown":
        yield Task(SAFETY, "vehicle/high_voltage", "look up whether the vehicle has a high-voltage system")
    if record.vehicle.high_voltage == "yes":
        things: list[Part | Opening] = [*record.parts.values(), *record.openings.values()]
        near = (_whereabouts(thing) for thing in things if record.high_voltage(thing) == "unknown")
        for place, name in dict.fromkeys(near):
            yield Task(SAFETY, f"{place}/high_voltage", f"look up how near the high voltage comes to {name}")


def _forty_eight(record: VehicleRecord) -> Iterator[Task]:
    """Whether there is a 48 V net, where somebody has left it open, and where a known one is."""
    if record.vehicle.forty_eight_volt == "unknown":
        yield Task(SAFETY, "vehicle/forty_eight_volt", "look up whether the vehicle has a 48 V net")
    if record.vehicle.forty_eight_volt == "yes" and not any(area.forty_eight_volt for area in record.areas.values()):
        yield Task(SAFETY, "areas", "look up where the parts of the 48 V net are")


def _whereabouts(thing: Part | Opening) -> tuple[str, str]:
    """Where its high voltage would be recorded, and what to call that."""
    if thing.area and not thing.high_voltage:
        return f"areas/{thing.area}", f"the area '{thing.area.replace('-', ' ')}'"
    return f"{'parts' if isinstance(thing, Part) else 'openings'}/{thing.id}", f"'{thing.name}'"


def _missing(record: VehicleRecord) -> Iterator[Task]:
    for name, rows in coverage.matrix(record).missing.items():
        where = " or ".join(row.label for row in rows)
        words = f"look for '{record.openings[name].name}' in a car with {where}: record it, or write 'not_in'"
        yield Task(MISSING, f"openings/{name}/when", words)


def _facts(record: VehicleRecord, opening: Opening, *, safety: bool) -> Iterator[Task]:
    kind = SAFETY if safety else DIMENSION
    for fact in lacking(record, opening):
        if fact.safety == safety:
            yield Task(kind, f"openings/{opening.id}/{fact.key}", say(fact.to_do))


def _sound(record: VehicleRecord) -> Iterator[Task]:
    """What a new speaker or receiver is held against, and nobody recorded of what drives the speakers."""
    if not record.sound and any(opening.sounds for opening in record.openings.values()):
        yield Task(
            SOUND, "sound", "find out what the factory radio sends to the speakers, and the least load it allows"
        )
    for item in record.sound.values():
        place, where = f"sound/{item.id}", _where(record, item)
        if item.output == "unknown":
            yield Task(SOUND, f"{place}/output", f"find out what the factory radio sends to the speakers{where}")
        if item.least_load in (None, Blank.UNKNOWN):
            driving = "factory amplifier" if item.amplifier else "factory radio"
            yield Task(SOUND, f"{place}/least_load", f"look up the least load that the {driving} allows{where}")
        if item.amplifier and item.turn_on in ("", "unknown"):
            yield Task(SOUND, f"{place}/turn_on", f"find out what switches the factory amplifier on{where}")


def _functions(record: VehicleRecord) -> Iterator[Task]:
    for item in record.functions.values():
        if item.by == "unknown":
            words = f"find out how the car provides '{say(named(item.id))}': by wire, by data or not at all"
            yield Task(FUNCTION, f"functions/{item.id}", f"{words}{_where(record, item)}")


def _duties(record: VehicleRecord) -> Iterator[Task]:
    for item in record.duties.values():
        if item.kept_by == "unknown":
            words = f"find out what becomes of '{item.id.replace('-', ' ')}' when the factory unit goes"
            yield Task(DUTY, f"duties/{item.id}", f"{words}{_where(record, item)}")


def _sides(record: VehicleRecord) -> Iterator[Task]:
    """What must be asked in cars of a drive side that the record covers and its facts were not taken on."""
    for drive_side in record.vehicle.drive_side:
        for fact in mirroring.mirrored(record, drive_side):
            if fact.there is None and fact.fact != "text":
                yield Task(SIDE, f"{fact.place}/mirrors", f"find out in {drive_side}-hand drive: {fact.ask}")


def _where(record: VehicleRecord, item: FunctionFact | Duty | SoundSystem) -> str:
    """Which cars it is about, as ' (Map radio)'; empty for all."""
    clauses = [coverage.label(record, {name: choice}) for name, choices in item.when.clauses for choice in choices]
    return f" ({', '.join(clauses)})" if clauses else ""
