"""The rows of the contacts of the car that no lead takes."""

from collections.abc import Iterator, Sequence

from undertrim.derive.wiring.bench import Bench
from undertrim.derive.wiring.contacts import Contact
from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.leads import named
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.never import apart
from undertrim.derive.wiring.row import Row, State
from undertrim.record.model.kinds.receiver import InterfaceGear


def pin_rows(bench: Bench, taken: Sequence[Row]) -> Iterator[Row]:
    """A row for each contact that is in none of the rows of the leads."""
    addresses = {point.address for row in taken for point in row.car}
    for point in bench.points:
        if point.address not in addresses:
            yield _row(bench, point)


def _row(bench: Bench, point: Point) -> Row:
    held = tuple(contact for contact in bench.held if contact.address == point.address)
    wrong = tuple(contact for contact in held if contact.lead.function != point.function)
    return _misled(point, wrong) if wrong else _alone(bench, point, held)


def _misled(point: Point, wrong: Sequence[Contact]) -> Row:
    """An adapter holds a contact there that leads to something else."""
    reasons = tuple(reason for contact in wrong if (reason := apart(contact.lead.function, point.function)))
    said = tuple(f"{contact.gear.name} leads this contact to {named(contact.lead.function)}" for contact in wrong)
    do = "; ".join(dict.fromkeys(reason.do for reason in reasons))
    return Row(point.function, State.NEVER, (point,), None, tuple(wrong), wrong[0].gear.name, reasons, said, do)


def _alone(bench: Bench, point: Point, held: tuple[Contact, ...]) -> Row:
    through = held[0].gear.name if held else ""
    words, do = _said(bench, point, held)
    return Row(point.function, State.PIN_ALONE, (point,), None, held, through, (), words, do)


def _said(bench: Bench, point: Point, held: Sequence[Contact]) -> tuple[tuple[str, ...], str]:
    if functions().functions[point.function].group == "data":
        names = " or ".join(item.name for item in bench.interfaces if isinstance(item.facts, InterfaceGear))
        return ("data of the car",), f"leave it to {names}" if names else "leave it alone: join nothing to it"
    same = [lead.id for lead in bench.leads if lead.function == point.function]
    if same:
        return (f"the lead '{same[0]}' has this function but is not led here",), "insulate it"
    if held:
        return (f"{held[0].gear.name} brings it out, and no lead takes it",), "insulate its end at the adapter"
    maker = bench.maker(point.function)
    if maker:
        return (f"{maker.name} takes it, and no lead does",), f"leave it to {maker.name}"
    return ("no lead takes it",), "leave it insulated"
