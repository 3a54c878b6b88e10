"""The questions about a car that follow from what its record says of the vehicle: several entries of a list make a variant of its own."""

from collections.abc import Mapping

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
