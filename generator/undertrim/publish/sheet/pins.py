"""A contact of a plug in the words of a printed sheet."""

from collections.abc import Mapping
from typing import Any

from undertrim.publish.sheet.pictures import Pictures

Data = Mapping[str, Any]


def pin(entry: Data, pictures: Pictures) -> dict[str, str]:
    """One row of a table of pins."""
    colour = entry["colour"]
    return {
        "id": entry["id"],
        "picture": pictures.wire(colour) if colour else "",
        "colour": colour_words(colour),
        "iec": colour["iec"] if colour else "",
        "function": entry["function_words"],
        "note": " ".join([*entry["conflicts"], entry["note"]]).strip(),
        "when": entry["when"],
    }


def colour_words(colour: Data | None) -> str:
    """A colour, with what it may be where it cannot be read."""
    if not colour:
        return "not recorded"
    may_be = " or ".join(colour["may_be"])
    return f"{colour['words']} (may be {may_be})" if may_be else str(colour["words"])
