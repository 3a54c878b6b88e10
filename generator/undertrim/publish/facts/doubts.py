"""What the evidence disagrees on, beside each fact that is shown: one way to say it on page, sheet, terminal and in the JSON."""

from collections.abc import Iterable

from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.procedure.steps import Step
from undertrim.publish.facts import evidence
from undertrim.record.model import Opening, Part, Prep, VehicleRecord
from undertrim.words import Value

Place = tuple[str | int, ...]


def marks(record: VehicleRecord, *places: Place) -> list[Value]:
    """The open disputes about the facts at these places and below them, in words; each once."""
    return said(record, (item for place in places for item in open_disputes(record, *place)))


def said(record: VehicleRecord, found: Iterable[Dispute]) -> list[Value]:
    """Disputes in words: `CONFLICT: Front door speakers: clear depth: 64 mm (e2) or 61 mm (e4). Until it is settled: 61 mm.`"""
    return list(dict.fromkeys(evidence.line(record, item) for item in found))


def of_step(record: VehicleRecord, step: Step) -> list[Value]:
    """What is disputed about a step: its part, preparation or opening, the area it is in, the restraint system where it waits, the rest where it is measured."""
    return marks(record, *_places(step)) if record.conflicts else []


def _places(step: Step) -> Iterable[Place]:
    thing = step.node.thing if step.node else None
    if isinstance(thing, Part):
        yield ("parts", thing.id)
    elif isinstance(thing, Prep):
        yield ("preps", thing.id)
    elif isinstance(thing, Opening):
        yield ("openings", thing.id)
    if thing is not None and thing.area:
        yield ("areas", thing.area)
    if step.wait or (isinstance(thing, Prep) and "battery" in thing.sets):
        yield ("restraint",)
        yield ("closures",)
    if step.kind == "measure":
        yield ("rest",)
    if step.kind == "todo":
        yield ("after_battery", step.section, step.detail)


def identity(record: VehicleRecord) -> list[Value]:
    """What is disputed about which vehicle this is, and how to tell its variants."""
    return marks(record, ("vehicle",))
