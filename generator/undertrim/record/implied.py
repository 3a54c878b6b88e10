"""The questions about a car that follow from what its record says of the vehicle: several entries of a list make a variant of its own."""

from collections.abc import Mapping

from undertrim.record.identity import slug
from undertrim.record.source import Data

LISTS: Mapping[str, str] = {
    "drive-side": "drive_side",
    "body": "bodies",
    "gearbox": "gearboxes",
    "engine": "engines",
    "trim-level": "trim_levels",
}
"""The field of the vehicle by the name of the variant."""

LABELLED = frozenset({"engine", "trim-level"})
"""Those whose entries are labels as people say them: the choice is the label as an id (`1.6 diesel` is `1-6-diesel`). Others are words of the schema."""


def choices(vehicle: Data) -> dict[str, dict[str, str]]:
    """By variant each entry as typed in a list of the vehicle, under the id that it has as a choice."""
    lists = {name: vehicle.get(listed) for name, listed in LISTS.items()} if isinstance(vehicle, dict) else {}
    return {
        name: {choice_id(name, entry): entry for entry in entries if isinstance(entry, str)}
        for name, entries in lists.items()
        if isinstance(entries, list)
    }


def choice_id(name: str, entry: str) -> str:
    """What an entry of a list of the vehicle is called as a choice."""
    return slug(entry) if name in LABELLED else entry
