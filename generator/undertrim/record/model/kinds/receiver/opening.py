"""A receiver's opening, as typed data."""

from dataclasses import dataclass
from typing import ClassVar

from undertrim.record.model.gear import AnyGear
from undertrim.record.model.kinds.receiver.gear import KitGear, ReceiverGear
from undertrim.record.model.openings import AnyOpening, Depth, Face


@dataclass(frozen=True, slots=True)
class ReceiverOpening(AnyOpening):
    """An opening in the dash; `kit` says whether it takes a dash kit: needed, not-needed or unknown."""

    kind: ClassVar[str] = "receiver"
    takes: ClassVar[type[AnyGear]] = ReceiverGear
    between: ClassVar[type[AnyGear] | None] = KitGear
    takes_over: ClassVar[bool] = True
    sounds: ClassVar[bool] = True

    face: Face | None = None
    kit: str = ""
    clear_front: Face | None = None
    depth: Depth | None = None

    @property
    def asks(self) -> tuple[str, ...]:
        """Whether a dash kit may be needed."""
        return () if self.kit == "not-needed" else ("kit",)
