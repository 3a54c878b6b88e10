"""A contact of a plug in the words of a printed sheet."""

from undertrim.publish.encoding import Published
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.words import message, one_of, say


def pin(entry: Published, pictures: Pictures) -> dict[str, str]:
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


def colour_words(colour: Published | None) -> str:
    """A colour, with what it may be where it cannot be read."""
    if not colour:
        return say(message("plugs/none-recorded"))
    if not colour["may_be"]:
        return str(colour["words"])
    return say(message("plugs/colour-may-be", colour=colour["words"], others=one_of(*colour["may_be"])))
