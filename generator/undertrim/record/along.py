"""A field that may be typed as a list with fields that stand beside it: which entry of the list is which field.

`release: [pull, rearward, 3 min]` says a motion, where it goes and how long it takes. The first entry is the field's own; each
other goes to the first field that is sure of it (one of its words, a quantity of its kind), or else to one that it may be meant for.
"""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from undertrim.record import units
from undertrim.record.nearness import slips
from undertrim.record.numerals import UnitError

if TYPE_CHECKING:
    from undertrim.record.shapes import Shape


def fields_of(values: Sequence[object], name: str, fields: Mapping[str, "Shape"]) -> list[str] | None:
    """The field that each entry of a list under the key `name` is for; None where they are too many, or no texts.

    An entry that no field is sure of goes to the next one in the order of the schema, where it is told what is wrong with it.
    """
    left = [other for other in fields[name].also if other in fields]
    if not values or len(values) > 1 + len(left) or not all(isinstance(value, str) for value in values):
        return None
    found = [name]
    for value in values[1:]:
        found.append(min(left, key=lambda other: _doubt(fields[other], str(value))))
        left.remove(found[-1])
    return found


def meant(field: "Shape", value: str) -> str:
    """The value that an entry stands for as a field: itself, unless the field has a word of its own for it there."""
    return field.listed.get(value, value)


def _doubt(field: "Shape", value: str) -> int:
    """How little a field asks for just this text: it is one of its own, a slip of one, as good as any other, or none."""
    if field.listed:
        return 0 if value in field.listed else 1 if slips(value, frozenset(field.listed)) else 4
    if value in field.words or value in field.blanks or (field.quantity and _reads(value, field.quantity)):
        return 0
    if slips(value, field.words):
        return 1
    return 3 if field.words or field.quantity else 2


def _reads(value: str, kind: str) -> bool:
    try:
        units.parse(value, kind)
    except UnitError:
        return False
    return True
