"""The page "A car we do not have": what a shop sees of a car before anything comes off, asked one question a screen, as a claims file for its record.

Which fields there are and which words may be answered stands in the schema of claims files; here is how a shop calls them.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from undertrim.publish.encoding import said
from undertrim.publish.web.pages import environment
from undertrim.record.schema import Schema, resolve
from undertrim.words import Message, message, once_per_language, say

PAGE = "new-car"
"""Where it stands in the site."""

SCRIPT = "assets/undertrim/new-car.js"

_SCREENS: Mapping[str, tuple[tuple[str, str], ...]] = {
    "name": (("make", "text"), ("model", "text"), ("tell", "text")),
    "built": (("from", "month"), ("to", "month")),
    "bodies": (("bodies", "choices"),),
    "drive_side": (("drive_side", "choices"),),
    "gearboxes": (("gearboxes", "choices"),),
    "high_voltage": (("high_voltage", "choice"), ("forty_eight_volt", "choice")),
    "dash": (("dash", "choice"),),
    "doors": (("doors", "choices"),),
    "boot": (("boot", "choice"),),
    "note": (("note", "text"),),
}
"""The screens in their order, each with its fields and how they are answered."""

_LABELS: Mapping[str, str] = {"bodies": "body", "drive_side": "drive-side", "gearboxes": "gearbox"}
"""The rooms of the catalogue that call the words of a field."""


def title() -> str:
    """The title of the page."""
    return say(message("new-car/title"))


@once_per_language
def page() -> str:
    """The body of the page."""
    return environment().get_template("new-car.html.j2").render(data=data())


def data() -> dict[str, Any]:
    """What the script asks, screen by screen."""
    screens = [
        {"id": name, "ask": message(f"new-car/ask-{_spelt(name)}"), "why": message(f"new-car/why-{_spelt(name)}"), "fields": list(_fields(fields))}
        for name, fields in _SCREENS.items()
    ]  # fmt: skip
    return dict(said({"screens": screens}))


def _fields(fields: tuple[tuple[str, str], ...]) -> Iterator[dict[str, object]]:
    block = resolve("urn:undertrim:claim#/$defs/newVehicle")
    months = _known(block["properties"]["built"])
    for name, form in fields:
        inside = months if form == "month" else block
        yield {
            "name": name,
            "title": message(f"new-car/{_spelt(name)}"),
            "form": form,
            "must": name in inside["required"],
            "most": _known(inside["properties"][name]).get("maxLength", 0),
            "choices": [{"word": word, "says": _label(name, word)} for word in _words(inside["properties"][name])],
        }


def _words(field: Schema) -> list[str]:
    known = _known(field)
    return list(known.get("enum", ()) or _known(known.get("items", {})).get("enum", ()))


def _known(block: Schema) -> Schema:
    return {**(_known(resolve(block["$ref"])) if "$ref" in block else {}), **block}


def _label(name: str, word: str) -> Message:
    if word == "unknown":
        return message("new/unknown")
    if name == "dash":
        return message(f"new/dash-{word}")
    if name == "doors":
        return message(f"areas/{word}-door")
    return message(f"{_LABELS[name]}/{word}") if name in _LABELS else message(f"new/{word}")


def _spelt(name: str) -> str:
    return name.replace("_", "-")
