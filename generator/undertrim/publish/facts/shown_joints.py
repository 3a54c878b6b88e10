"""What a table of a joint says on page, sheet, terminal and in the JSON: its rows, both ends of each, and what the contacts meet."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.publish.encoding import Spread
from undertrim.publish.facts.pin_colours import Colour
from undertrim.words import Message, Value, Word


@dataclass(frozen=True, slots=True)
class JointGear:
    """A harness or an interface between car and gear."""

    id: str
    name: str
    kind: str
    note: str


@dataclass(frozen=True, slots=True)
class ShownPoint:
    """Where the car has a function: `address` is plug/pin, empty for what is on no recorded pin; `words` says how it is had there."""

    function: str
    function_words: Word
    by: str
    words: Value
    address: str
    plug: str
    pin: str
    colour: Colour | None
    behaves: str
    supply: Value
    draws: Value
    disputed: bool
    note: str


@dataclass(frozen=True, slots=True)
class ShownContact:
    """A contact of a harness or an interface, and the lead at it."""

    gear: str
    gear_name: str
    address: str
    plug: str
    pin: str
    made_for: str
    function: str
    function_words: Word
    colour: Colour | None
    note: str


@dataclass(frozen=True, slots=True)
class ShownLead:
    """A lead of the gear; `level` is empty where it carries no sound."""

    id: str
    colour: Colour | None
    level: str
    behaves: str
    supply: Value
    limit: Value
    fuse: Value
    gauge: str
    note: str


@dataclass(frozen=True, slots=True)
class ShownReason:
    """Why a row is in its state."""

    name: str
    words: Value


@dataclass(frozen=True, slots=True)
class PlainRow:
    """A function with both its ends, and what is done about it."""

    id: str
    function: str
    function_words: Word
    state: str
    state_words: Message
    car: Sequence[ShownPoint]
    contacts: Sequence[ShownContact]
    lead: ShownLead | None
    through: Value
    reasons: Sequence[ShownReason]
    words: Sequence[Value]
    do: Value


@dataclass(frozen=True, slots=True)
class ExtraContact:
    """A contact that has no counterpart in the car."""

    contact: Spread[ShownContact]
    words: Value


@dataclass(frozen=True, slots=True)
class Differing:
    """A contact that meets another function in the car."""

    contact: ShownContact
    car: ShownPoint


@dataclass(frozen=True, slots=True)
class ShownContacts:
    """How the contacts of a harness meet the pins of the car."""

    extra: Sequence[ExtraContact]
    missing: Sequence[ShownPoint]
    differing: Sequence[Differing]


@dataclass(frozen=True, slots=True)
class JointHead:
    """Which cars a table is for (none for every car asked for, `cars_words` names them), what goes between, the sound, and how many rows each state has, exceptions first."""

    cars: Sequence[Mapping[str, str]]
    cars_words: Value
    harness: JointGear | None
    between: Sequence[JointGear]
    sound: str
    sound_words: Value
    counts: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class PlainTable:
    """One table with its rows and what its contacts meet."""

    head: Spread[JointHead]
    rows: Sequence[PlainRow]
    contacts: ShownContacts
    notes: Sequence[Value]


@dataclass(frozen=True, slots=True)
class JointTables:
    """The tables of one receiver or lead set in one opening, one for each group of cars."""

    vehicle: str
    title: str
    demo: bool
    gear: str
    gear_name: str
    tables: Sequence[PlainTable]
