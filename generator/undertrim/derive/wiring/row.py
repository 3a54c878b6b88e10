"""One row of a joint table: a lead, a wire of the car, or both, and how they stand to each other."""

from dataclasses import dataclass
from enum import StrEnum

from undertrim.derive.wiring.contacts import Contact
from undertrim.derive.wiring.leads import table_order
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.never import Reason
from undertrim.record.gear import Lead
from undertrim.words import Value


class State(StrEnum):
    """How the two sides of a row stand, in the order in which a table shows them: exceptions first."""

    NEVER = "never"
    CONFLICT = "conflict"
    INTERFACE = "interface"
    LEAD_ALONE = "lead-alone"
    PIN_ALONE = "pin-alone"
    UNKNOWN = "unknown"
    OTHER_COLOUR = "other-colour"
    JOINED = "joined"


@dataclass(frozen=True, slots=True)
class Row:
    """One row. `car` is what the car has, or what an adapter would lead there; `lead` is None where no lead takes it.

    `through` is the name of the gear that carries it, empty for a joint by hand. `reasons` are those not to join, `words` what there is to
    know, `do` what to do.
    """

    function: str
    state: State
    car: tuple[Point, ...]
    lead: Lead | None = None
    contacts: tuple[Contact, ...] = ()
    through: str = ""
    reasons: tuple[Reason, ...] = ()
    words: tuple[Value, ...] = ()
    do: Value = ""

    @property
    def id(self) -> str:
        """Stable in the table: of the lead, else of the pin."""
        return f"lead-{self.lead.id}" if self.lead else f"pin-{self.car[0].plug}-{self.car[0].pin}"


def sorting(row: Row) -> tuple[int, int]:
    """Exceptions first, then in the order of the functions."""
    return (list(State).index(row.state), table_order(row.function))
