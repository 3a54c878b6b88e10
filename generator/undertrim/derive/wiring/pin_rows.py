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
from undertrim.words import Items, Message, message, one_of


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
    said = tuple(
        message("joint/leads-contact-to", gear=contact.gear.name, function=named(contact.lead.function))
        for contact in wrong
    )
    do = Items(tuple(dict.fromkeys(reason.do for reason in reasons)), "semicolon")
    return Row(point.function, State.NEVER, (point,), None, tuple(wrong), wrong[0].gear.name, reasons, said, do)


def _alone(bench: Bench, point: Point, held: tuple[Contact, ...]) -> Row:
    through = held[0].gear.name if held else ""
    words, do = _said(bench, point, held)
    return Row(point.function, State.PIN_ALONE, (point,), None, held, through, (), (words,), do)


def _said(bench: Bench, point: Point, held: Sequence[Contact]) -> tuple[Message, Message]:
    """What there is to know of such a contact, and what to do."""
    if functions().functions[point.function].group == "data":
        names = [item.name for item in bench.interfaces if isinstance(item.facts, InterfaceGear)]
        return message("joint/data-of-the-car"), _leave_to(*names) if names else message("joint/leave-alone")
    same = [lead.id for lead in bench.leads if lead.function == point.function]
    if same:
        return message("joint/not-led-here", lead=same[0]), message("joint/insulate")
    if held:
        return message("joint/brought-out", gear=held[0].gear.name), message("joint/insulate-at-adapter")
    maker = bench.maker(point.function)
    if maker:
        return message("joint/taken-by", gear=maker.name), _leave_to(maker.name)
    return message("joint/no-lead"), message("joint/leave-insulated")


def _leave_to(*names: str) -> Message:
    return message("joint/leave-to", gear=one_of(*names))
