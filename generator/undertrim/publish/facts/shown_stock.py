"""What the file of a vehicle on the shelf says: what becomes of duties, the steps of kits, and joints, with the gear in stock."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.publish.facts import blockers, kits, words
from undertrim.publish.pictures.drawings import wires
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class StockDuty:
    """What becomes of a duty of the factory unit with the gear in stock."""

    name: Value
    becomes: Value
    conflicts: Sequence[Value]
    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class WireColour:
    """A colour of wire in words, by the id of its picture, empty for one without, and by what it is drawn of."""

    words: Value
    may_be: Value
    id: str
    shapes: Sequence[wires.Shape]


@dataclass(frozen=True, slots=True)
class StockEnd:
    """One end of a joint: `at` names it, `pin` is the address of its row in the table of its plug, `colour` its place among the colours, None for one that has none."""

    at: Value
    pin: str
    colour: int | None
    more: Value


@dataclass(frozen=True, slots=True)
class StockRow:
    """A function with its ends and what is done about it; `why` says why the two must never meet."""

    id: str
    state: str
    state_words: Value
    function: Value
    car: Sequence[StockEnd]
    contacts: Sequence[StockEnd]
    through: Value
    lead: StockEnd | None
    why: Sequence[Value]
    said: Value
    do: Value


@dataclass(frozen=True, slots=True)
class StockTable:
    """The joint in one group of cars, none for all: what plugs in, what stands between, what the car wants, and what its contacts meet."""

    cars: Sequence[Mapping[str, str]]
    cars_words: Value
    harness: Value
    between: Value
    wants: Value
    counts: Value
    notes: Sequence[Value]
    extra: Sequence[Value]
    missing: Sequence[StockEnd]
    rows: Sequence[StockRow]


@dataclass(frozen=True, slots=True)
class StockJoint:
    """A lead set in stock joined to the car at one opening; `receivers` are those that come with it."""

    opening: str
    leads: str
    name: str
    note: str
    receivers: Value
    tables: Sequence[StockTable]


@dataclass(frozen=True, slots=True)
class StockVisit:
    """What the page of a visit fetches: what is in the way, and by opening the kits that are built up there."""

    blockers: Sequence[blockers.Blocker]
    kits: Mapping[str, Sequence[kits.KitWork]]


@dataclass(frozen=True, slots=True)
class StockWiring:
    """What the page of the wiring fetches: duties and joints, and `colours`, the wires of the joints, each once."""

    duties: Sequence[StockDuty]
    joints: Sequence[StockJoint]
    colours: Sequence[WireColour]
