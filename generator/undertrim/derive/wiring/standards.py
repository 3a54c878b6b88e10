"""What a standard block leads one to expect at each contact, and the pair that is known to be exchanged."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from undertrim.record.model import Connector
from undertrim.resources import table
from undertrim.words import Value, word


@dataclass(frozen=True, slots=True)
class Expected:
    """What a contact is for by its standard; `function` is empty for one that is left free.

    `also` are functions that some units have there instead. Expected, not promised: the meter decides.
    """

    pin: str
    function: str = ""
    also: tuple[str, ...] = ()
    note: Value = ""

    def allows(self, function: str) -> bool:
        """Whether a function is what the table has here, or is known to be here too; a free contact allows any."""
        return not self.function or function == self.function or function in self.also


def title(standard: str) -> Value:
    """A standard in words, `ISO 10487 block A`; empty where none is named."""
    return word("plug-standards", standard, "title") if standard else ""


@cache
def block(standard: str) -> Mapping[str, Expected]:
    """Every contact of a block by its pin, in order; nothing for a standard that the table does not have."""
    pins = table("plug-standards").get(standard, {}).get("pins", {})
    return {
        pin: Expected(pin, row.get("function", ""), tuple(row.get("also", ())), _note(standard, pin, row))
        for pin, row in pins.items()
    }


def _note(standard: str, pin: str, row: Mapping[str, object]) -> Value:
    return word("plug-standards", standard, "pins", pin, "note") if "note" in row else ""


def expected(standard: str, pin: str) -> Expected | None:
    """What the standard leads one to expect at a pin (`A4`); None where it has no such pin."""
    return block(standard).get(pin)


def exchanged(connector: Connector) -> tuple[str, ...]:
    """The pins that carry each other's function, A4 and A7 of block A; empty where none do.

    One of them is enough: a record may know only one of the two.
    """
    swapped = table("plug-standards").get(connector.standard, {}).get("exchanged", {})
    return tuple(
        pin for pin, function in swapped.items() if pin in connector.pins and connector.pins[pin].function == function
    )


def unproven(connector: Connector) -> tuple[str, ...]:
    """The pins whose function differs from the standard's and was not proved with a meter."""
    return tuple(
        pin.id
        for pin in connector.pins.values()
        if (wanted := expected(connector.standard, pin.id)) and not wanted.allows(pin.function) and pin.metered != "yes"
    )
