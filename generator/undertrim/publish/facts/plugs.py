"""A plug as data for page, sheet and JSON: both faces, the other maps of it, and what its standard expects."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.evidence.claims import METER
from undertrim.derive.wiring import plugs, standards
from undertrim.derive.wiring.ends import called
from undertrim.derive.wiring.needs import doubts
from undertrim.publish.facts import words
from undertrim.publish.facts.pin_colours import Colour, colour
from undertrim.publish.facts.plug_maps import OtherMap, Telling, maps, told_by
from undertrim.publish.facts.wiring import VIEWS, function_name
from undertrim.publish.pictures.drawings.plugs import Edge, least_width
from undertrim.record.model import Connector, Pin, VehicleRecord
from undertrim.resources import table
from undertrim.words import Items, Message, Value, message, word

_LEGEND = {
    "blank": message("plugs/sign-blank"),
    "unknown": message("plugs/sign-unknown"),
    "some": message("plugs/sign-some"),
    "colour": message("plugs/sign-colour"),
}
_SURE = {"secondary": message("plugs/sure-secondary")}


@dataclass(frozen=True, slots=True)
class PlugCell:
    """A position of a drawn face with what is in it; `link` leads to its pin in the table."""

    row: int
    column: int
    number: str
    state: str
    function: str
    mark: Value
    colour: Colour | None
    when: Value
    clauses: words.Clauses
    words: Message
    link: str


@dataclass(frozen=True, slots=True)
class PlugFace:
    """A plug from one side; `recorded` is whether the record looks at it from there, `least_width` is in px."""

    view: str
    words: Message
    title: Message
    recorded: bool
    latch: str
    rows: int
    columns: int
    least_width: float
    cells: Sequence[PlugCell]


@dataclass(frozen=True, slots=True)
class StandardPin:
    """One contact of the block of a standard; `agrees` is yes or no, or unknown where the record has no such pin."""

    pin: str
    expected: Value
    note: Value
    recorded: Value
    agrees: str
    metered: str


@dataclass(frozen=True, slots=True)
class ShownStandard:
    """The block of a plug's standard beside what is recorded."""

    id: str
    title: Value
    sure: Message
    exchanged: Sequence[Value]
    unproven: Sequence[Value]
    pins: Sequence[StandardPin]


@dataclass(frozen=True, slots=True)
class Plug:
    """Everything that is drawn or said of one plug beside its table of pins; `no_face` says why it is not drawn."""

    id: str
    name: Value
    scheme: Value
    faces: Sequence[PlugFace]
    legend: Sequence[Message]
    no_face: Value
    lost: Sequence[str]
    standard: ShownStandard | None
    told_by: Sequence[Telling]
    maps: Sequence[OtherMap]


def plug(record: VehicleRecord, connector: Connector) -> Plug:
    """Everything that is drawn or said of one plug beside its table of pins."""
    layout = plugs.layout(connector)
    faces = [_face(record, connector, face) for face in plugs.faces(connector) or ()]
    return Plug(
        id=connector.id,
        name=called(connector),
        scheme=word("colour-schemes", connector.scheme, "title") if connector.scheme else "",
        faces=faces,
        legend=_legend(faces[0].cells) if faces else [],
        no_face=_no_face(layout),
        lost=layout.lost,
        standard=_standard(connector),
        told_by=told_by(record, connector),
        maps=maps(record, connector),
    )


def _no_face(layout: plugs.Layout) -> Value:
    """Why it is not drawn; empty where it is."""
    if layout.sound:
        return ""
    wrong = [*layout.outside, *layout.shared]
    return message("plugs/contradict", pins=Items(tuple(wrong), "comma")) if wrong else message("plugs/not-recorded")


def _legend(cells: Sequence[PlugCell]) -> list[Message]:
    """The signs that this drawing has, in words."""
    signs = {cell.state for cell in cells}
    signs |= {"some" for cell in cells if cell.when}
    signs |= {"colour" for cell in cells if cell.state == "pin" and not (cell.colour and cell.colour.base)}
    return [meaning for sign, meaning in _LEGEND.items() if sign in signs]


def _face(record: VehicleRecord, connector: Connector, face: plugs.Face) -> PlugFace:
    latch: Edge = face.latch  # type: ignore[assignment]  # the schema has these words alone
    return PlugFace(
        view=face.view,
        words=VIEWS[face.view],
        title=message("plugs/face", plug=called(connector), view=VIEWS[face.view]),
        recorded=face.view == connector.view,
        latch=face.latch,
        rows=face.rows,
        columns=face.columns,
        least_width=least_width(face.columns, latch),
        cells=[_cell(record, connector, cell) for cell in face.cells],
    )


def _cell(record: VehicleRecord, connector: Connector, cell: plugs.Cell) -> PlugCell:
    pin = cell.pin
    return PlugCell(
        row=cell.place.row,
        column=cell.place.column,
        number=cell.number,
        state=cell.state,
        function=pin.function if pin else "",
        mark=word("plug-marks", "mark", pin.function) if pin else "",
        colour=colour(pin.colour, connector.scheme) if pin else None,
        when=words.when(record, pin.when) if pin else "",
        clauses=words.clauses(pin.when) if pin else {},
        words=_pin_words(record, connector, pin) if pin else _empty_words(cell),
        link=f"#pin-{connector.id}-{pin.id}" if pin else "",
    )


def _pin_words(record: VehicleRecord, connector: Connector, pin: Pin) -> Message:
    """`Pin 4: battery feed, yellow with red tracer, only in: Map radio`."""
    wire = colour(pin.colour, connector.scheme)
    said: list[Value] = [function_name(pin.function), wire.words if wire else message("plugs/colour-unknown")]
    said += [METER] if doubts(record, connector, pin) else []
    what, only = Items(tuple(said), "comma"), words.when(record, pin.when)
    if only:
        return message("plugs/pin-only", pin=pin.id, what=what, cars=only)
    return message("plugs/pin", pin=pin.id, what=what)


def _empty_words(cell: plugs.Cell) -> Message:
    if cell.number:
        where = message("plugs/position", number=cell.number)
    else:
        where = message("plugs/row-column", row=cell.place.row, column=cell.place.column)
    return message("plugs/position-empty" if cell.state == "blank" else "plugs/position-unknown", where=where)


def _standard(connector: Connector) -> ShownStandard | None:
    """The block of its standard beside what is recorded; None where it names none."""
    if not connector.standard:
        return None
    return ShownStandard(
        id=connector.standard,
        title=standards.title(connector.standard),
        sure=_SURE[table("plug-standards")[connector.standard]["sure"]],
        exchanged=list(standards.exchanged(connector)),
        unproven=list(standards.unproven(connector)),
        pins=[_expected(connector, item) for item in standards.block(connector.standard).values()],
    )


def _expected(connector: Connector, item: standards.Expected) -> StandardPin:
    """One contact of the block; `agrees` is yes or no, or unknown where the record has no such pin."""
    pin = connector.pins.get(item.pin)
    agrees = "unknown" if pin is None else "yes" if item.allows(pin.function) else "no"
    return StandardPin(
        pin=item.pin,
        expected=function_name(item.function) if item.function else message("plugs/left-free"),
        note=item.note,
        recorded=function_name(pin.function) if pin else "",
        agrees=agrees,
        metered=pin.metered if pin else "",
    )
