"""The joints of a vehicle with the lead sets in stock, as its file on the shelf has them: what is shown of each end, each colour of wire once."""

from undertrim.publish.facts import words
from undertrim.publish.facts.joints import JointRow, JointTable, ShownJoint
from undertrim.publish.facts.pin_colours import Colour
from undertrim.publish.facts.shown_joints import ShownContact, ShownLead, ShownPoint
from undertrim.publish.facts.shown_stock import StockEnd, StockJoint, StockRow, StockTable, WireColour
from undertrim.publish.pictures.drawings import wires
from undertrim.words import Items, Value, message

UNKNOWN_COLOUR = message("plugs/colour-unknown")


class Tables:
    """Makes tables, and collects the colours of their wires."""

    def __init__(self) -> None:
        self.colours: list[WireColour] = []
        self._places: dict[tuple[str, ...], int] = {}

    def joint(self, item: ShownJoint) -> StockJoint:
        """One lead set at one opening."""
        receivers = Items(tuple(item.receivers), "comma") if item.receivers else ""
        tables = [self._table(one) for one in item.tables]
        return StockJoint(item.opening, item.leads, item.name, item.note, receivers, tables)

    def _table(self, table: JointTable) -> StockTable:
        head, harness = table.head, table.head.harness
        extra = [message("joint/contact-what", at=one.contact.address, what=one.words) for one in table.contacts.extra]
        return StockTable(
            cars=head.cars,
            cars_words=head.cars_words,
            harness=harness.name if harness else message("joint/hand-only"),
            between=words.listed(*(item.name for item in head.between)),
            wants=head.sound_words,
            counts=table.counts_words,
            notes=table.notes,
            extra=extra,
            missing=[StockEnd(one.address, _pin(one), None, one.function_words) for one in table.contacts.missing],
            rows=[self._row(row, harness.id if harness else "") for row in table.rows],
        )

    def _row(self, item: JointRow, harness: str) -> StockRow:
        row = item.row
        return StockRow(
            id=row.id,
            state=row.state,
            state_words=message("joint/state", sign=item.sign, state=row.state_words),
            function=row.function_words,
            car=[self._point(one) for one in row.car],
            contacts=[self._contact(one, harness) for one in row.contacts],
            through=row.through,
            lead=self._lead(row.lead) if row.lead else None,
            why=[reason.words for reason in row.reasons],
            said=words.listed(*row.words, *item.notes, joined="semicolon"),
            do=row.do,
        )

    def _point(self, one: ShownPoint) -> StockEnd:
        if one.address:
            return StockEnd(one.address, _pin(one), self._colour(one.colour), one.supply)
        return StockEnd(one.words, "", self._colour(one.colour) if one.colour else None, "")

    def _contact(self, one: ShownContact, harness: str) -> StockEnd:
        at: Value = one.address
        if harness and one.gear != harness:
            at = message("joint/gear-at", gear=one.gear_name, at=one.address)
        return StockEnd(at, "", self._colour(one.colour), "")

    def _lead(self, one: ShownLead) -> StockEnd:
        more = words.listed(
            message("levels/line") if one.level == "line" else "",
            message("joint/fuse", rating=one.fuse) if one.fuse else "",
            one.gauge.replace("mm2", "mm²"),
        )
        return StockEnd(one.id, "", self._colour(one.colour), more)

    def _colour(self, colour: Colour | None) -> int:
        drawn = _drawn(colour)
        key = (drawn.id, repr(drawn.words), repr(drawn.may_be))
        if key not in self._places:
            self._places[key] = len(self.colours)
            self.colours.append(drawn)
        return self._places[key]


def _drawn(colour: Colour | None) -> WireColour:
    if colour is None:
        return WireColour(UNKNOWN_COLOUR, "", "", ())
    may_be = Items(tuple(colour.may_be), "or") if colour.may_be else ""
    if not colour.base:
        return WireColour(colour.words, may_be, "", ())
    name, shapes = wires.named(colour.base, colour.tracers), wires.shapes(colour.base, tuple(colour.tracers))
    return WireColour(colour.words, may_be, name, shapes)


def _pin(one: ShownPoint) -> str:
    """Where its row stands in the table of its plug."""
    return f"pin-{one.plug}-{one.pin}" if one.address else ""
