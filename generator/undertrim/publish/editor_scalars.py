"""What a text or a number of a record looks like to an editor, which reads scalars as YAML does: a pattern, or its sort and limits."""

import re
from collections.abc import Mapping
from typing import Any

from undertrim.record.schema import SchemaText, blanks
from undertrim.record.unit_table import Unit, kinds
from undertrim.record.units import in_units_of
from undertrim.words import say

Made = dict[str, Any]

_KEPT = (
    "minLength",
    "maxLength",
    "minItems",
    "maxItems",
    "uniqueItems",
    "minProperties",
    "maxProperties",
    "minimum",
    "maximum",
)
_NUMBER = r"[-−]?([0-9]+( | ?- ?))?([0-9]+ ?[/⁄] ?[0-9]+|[0-9]+(\.[0-9]+)?|\.[0-9]+)"
_NUMBERS = ("0", "4", "14", "2016", "12345678", "0.5")


def english(said: Any) -> Any:
    """A word for people, in English."""
    return said.english if isinstance(said, SchemaText) else said


def kept(says: Mapping[str, Any], what: str) -> Made:
    """The limits that a schema sets to items, properties or length."""
    return {word: says[word] for word in _KEPT if what in word and word in says and word != "uniqueItems"} | (
        {"uniqueItems": True} if what == "Items" and says.get("uniqueItems") else {}
    )


def scalar(says: Mapping[str, Any]) -> Made:
    """A text or a whole number, as YAML may read it."""
    if "quantity" in says:
        return _patterned(quantity(says["quantity"]), {}, say(in_units_of(kinds()[says["quantity"]["kind"]])))
    if "integer" in says["type"]:
        words = "|unknown" if says.get("mayBeUnknown") else ""
        limits = {word: says[word] for word in ("minimum", "maximum") if word in says}
        return {"type": ["integer", "string"], "pattern": f"^(-?(0|[1-9][0-9]*){words})$", **limits}
    limits = kept(says, "Length")
    if "pattern" in says:
        return _patterned(says["pattern"], limits, says.get("hint"))
    return {"type": ["string", "number", "boolean"], **limits}


def _patterned(pattern: str, limits: Made, hint: Any = None) -> Made:
    """A text of a pattern; a number too, where one could be of the pattern."""
    plain = any(re.search(pattern, number) for number in _NUMBERS)
    told = {"patternErrorMessage": english(hint)} if hint else {}
    return {"type": ["string", "number"] if plain else "string", "pattern": pattern, **limits, **told}


def quantity(spec: Mapping[str, Any]) -> str:
    """The pattern of a number with a unit of its kind, and of the words that may stand instead."""
    kind = kinds()[spec["kind"]]
    units = dict.fromkeys(_spelling(text, unit) for unit in kind.units.values() for text in unit.spellings)
    unit = " *(" + "|".join(units) + ")" if any(units) else ""
    bound = "(at least )?" if spec.get("bound") else ""
    return "^(" + "|".join((*blanks(dict(spec)), bound + _NUMBER + unit)) + ")$"


def _spelling(text: str, unit: Unit) -> str:
    letters = (
        f"[{one.lower()}{one.upper()}]" if unit.any_case and one.isalpha() and one.isascii() else re.escape(one)
        for one in text
    )
    return "".join("( ?[·⋅•∙*.] ?|[ -])" if letter == "\\." else letter for letter in letters)
