"""Values of the model as the scripts of the page read them."""

from dataclasses import fields, is_dataclass
from typing import Any

from undertrim.record.units import Quantity


def plain(value: Any) -> Any:
    """A value of the model as the script reads it: quantities as { value, step, text, shown, least }, words and counts as they are, null for nothing."""
    if isinstance(value, Quantity):
        return {
            "value": value.value,
            "step": value.step,
            "text": value.text,
            "shown": value,
            "least": value.least,
        }
    if isinstance(value, tuple):
        return [plain(item) for item in value]
    if is_dataclass(value) and not isinstance(value, type):
        return {entry.name: plain(getattr(value, entry.name)) for entry in fields(value) if entry.name != "source"}
    return value if value is None or isinstance(value, bool | int) else str(value)
