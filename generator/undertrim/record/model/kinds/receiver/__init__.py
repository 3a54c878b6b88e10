"""A receiver's opening in the dash, and the gear that is for it."""

from undertrim.record.model.kinds.receiver.gear import (
    ConverterGear,
    HarnessGear,
    InterfaceGear,
    KitGear,
    LeadsGear,
    ReceiverGear,
)
from undertrim.record.model.kinds.receiver.opening import ReceiverOpening

Opening = ReceiverOpening
Gear = ReceiverGear | KitGear | HarnessGear | InterfaceGear | ConverterGear | LeadsGear

__all__ = [
    "ConverterGear",
    "Gear",
    "HarnessGear",
    "InterfaceGear",
    "KitGear",
    "LeadsGear",
    "Opening",
    "ReceiverGear",
    "ReceiverOpening",
]
