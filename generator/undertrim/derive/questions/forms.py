"""What an answer about a field looks like, read from the schema."""

from undertrim.derive.questions.question import AnswerForm
from undertrim.record.model import Blank
from undertrim.record.schema import Schema
from undertrim.record.source import Pointer
from undertrim.record.unit_table import kinds

UNKNOWN = str(Blank.UNKNOWN)
_PLAIN = "text"


def form(schema: Schema, place: Pointer) -> AnswerForm:
    """The form of one value; `place` tells fields that only their name sets apart."""
    quantity = schema.get("quantity", {})
    unknown = bool(schema.get("mayBeUnknown") or quantity.get("unknown") or UNKNOWN in schema.get("enum", ()))
    if quantity:
        return _measured(quantity, unknown=unknown)
    if "enum" in schema:
        choices = tuple(word for word in schema["enum"] if word != UNKNOWN)
        return AnswerForm("choice", choices=choices, unknown=unknown)
    if schema.get("type") == "array":
        return AnswerForm("choices", choices=tuple(schema["items"].get("enum", ())), unknown=unknown)
    return AnswerForm(_sort(schema, place), unknown=unknown)


def _measured(quantity: Schema, *, unknown: bool) -> AnswerForm:
    least, most = quantity.get("plausible", ("", ""))
    kind: str = quantity["kind"]
    return AnswerForm(
        "quantity", kind, kinds()[kind].offer, least, most, none=bool(quantity.get("none")), unknown=unknown
    )


def _sort(schema: Schema, place: Pointer) -> str:
    if place[0] == "connectors" and place[-1] == "colour":
        return "colour"
    if schema.get("leads") == "pin":
        return "pin"
    if "drive" in schema:
        return "drive"
    return "number" if schema.get("type") == "integer" else _PLAIN
