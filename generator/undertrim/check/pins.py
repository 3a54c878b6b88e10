"""The contacts of a record's plugs, with all that decides in which cars they are."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record.model import Connector, Part, Pin, Tether, VehicleRecord, When
from undertrim.record.source import Pointer
from undertrim.words import Message, message


@dataclass(frozen=True, slots=True)
class Contact:
    """One pin of one plug; a car has it where all `conditions` hold."""

    connector: Connector
    pin: Pin
    conditions: tuple[When, ...]

    @property
    def place(self) -> Pointer:
        """Where the pin stands."""
        return ("connectors", self.connector.id, "pins", self.pin.id)

    @property
    def said(self) -> Message:
        """The pin as it stands in a sentence: pin 3 of 'main'."""
        return message("pins/of-plug", pin=self.pin.id, plug=self.connector.id)


def contacts(record: VehicleRecord) -> Iterator[Contact]:
    """Every pin of every plug, in file order."""
    for connector in record.connectors.values():
        found = tether_of(record, connector)
        around = (found[0].when, found[1].when) if found else ()
        for pin in connector.pins.values():
            yield Contact(connector, pin, (*around, connector.when, pin.when))


def tether_of(record: VehicleRecord, connector: Connector) -> tuple[Part, Tether] | None:
    """The tether that a plug belongs to, with its part; None if it names none, or one that does not exist."""
    name, _, tether = connector.at.partition("/")
    part = record.parts.get(name)
    return (part, part.tethers[tether]) if part and tether in part.tethers else None
