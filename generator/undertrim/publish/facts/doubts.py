"""What the evidence disagrees on, and what nobody has seen on this car, beside each fact that is shown: one way to say it on page, sheet, terminal and in the JSON."""

from collections.abc import Iterable

from undertrim.derive.evidence import taken
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.procedure.steps import Step
from undertrim.derive.wiring.needs import of_plug as disputes_of_plug
from undertrim.publish.facts import evidence
from undertrim.record.model import Connector, Opening, Part, Prep, Reached, VehicleRecord
from undertrim.words import Value

Place = tuple[str | int, ...]

_FIRST_HANDS = ("prepare", "remove", "install")
"""Kinds of steps in which a thing is met for the first time: that nobody has seen it is worth saying there, and not with each test and refit."""


def marks(record: VehicleRecord, *places: Place) -> list[Value]:
    """What is not sure of the facts at these places and below them, in words; each once."""
    return [*disputes(record, *places), *unseen(record, *places)]


def disputes(record: VehicleRecord, *places: Place) -> list[Value]:
    """The open disputes about them."""
    return said(record, (item for place in places for item in open_disputes(record, *place)))


def unseen(record: VehicleRecord, *places: Place) -> list[Value]:
    """What of them is taken from another car."""
    return list(dict.fromkeys(found for place in places if (found := taken.unseen(record, *place))))


def of_plug(record: VehicleRecord, plug: Connector) -> list[Value]:
    """What is not sure of a plug: what is disputed of it or of one of its pins, and what is taken."""
    return [*said(record, disputes_of_plug(record, plug)), *unseen(record, ("connectors", plug.id))]


def said(record: VehicleRecord, found: Iterable[Dispute]) -> list[Value]:
    """Disputes in words: `CONFLICT: Front door speakers: clear depth: 64 mm (e2) or 61 mm (e4). Until it is settled: 61 mm.`"""
    return list(dict.fromkeys(evidence.line(record, item) for item in found))


def of_step(record: VehicleRecord, step: Step) -> list[Value]:
    """What is disputed about a step: its part, preparation or opening, the area it is in, the restraint system where it waits, the rest where it is measured."""
    places = list(_places(step)) if record.conflicts or taken.is_unseen(record) else []
    return [*disputes(record, *places), *(unseen(record, *places) if step.kind in _FIRST_HANDS else ())]


def _places(step: Step) -> Iterable[Place]:
    thing = step.node.thing if step.node else None
    if isinstance(thing, Part):
        yield ("parts", thing.id)
    elif isinstance(thing, Prep):
        yield ("preps", thing.id)
    elif isinstance(thing, Opening):
        yield ("openings", thing.id)
    if thing is not None and not isinstance(thing, Reached) and thing.area:
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
