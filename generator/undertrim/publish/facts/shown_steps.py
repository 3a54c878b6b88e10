"""What a step says on page, sheet, terminal and in the JSON: one type each for the step, its lines and what they come to."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from undertrim.publish.facts import places, words
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Head:
    """The drive of a fastener: its family, and what it is called with its size."""

    family: str
    label: Value


@dataclass(frozen=True, slots=True)
class Purchase:
    """Something single-use to buy: how many (None for an unknown number), what, and the part it is for."""

    count: int | None
    what: Value
    part: Value


@dataclass(frozen=True, slots=True)
class Tally:
    """How many fasteners of one sort come out and what becomes of them; `unrecorded` are those of which nobody has counted how many."""

    sort: Value
    out: int
    back: int
    moved: int
    bagged: int
    binned: int
    new: int
    unrecorded: int


@dataclass(frozen=True, slots=True)
class ShownFastenerLine:
    """Fasteners of one sort in a step, in words and as the totals count them. `when` is empty where the step's own condition holds for them too."""

    fate: str
    fate_words: Value
    later: str
    later_words: Value
    kind: str
    count: int | Literal["unknown"]
    text: Value
    detail: Value
    hidden_by: str
    tool: Value
    either: Sequence[Value]
    single_use: bool
    head: Head | None
    sort: Value
    at: Mapping[str, int]
    where: str
    torque: Value
    counts: Sequence[Tally]
    buy: Sequence[Purchase]
    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class ShownTetherLine:
    """A plug, cable or hose in a step and what is done with it; `part` and `side` say what it is on where the step is about something else."""

    id: str
    name: str
    kind: str
    kind_words: Value
    restraint: bool
    circuit_words: Value
    act: str
    act_words: Value
    later: Sequence[str]
    later_words: Value
    part: str
    side: str
    serves: Sequence[Value]
    how: Value
    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class ShownWait:
    """A wait: the maker's time in s with its words, None and where to look it up where nobody has recorded it."""

    seconds: float | None
    text: Value
    why: Value
    source: Sequence[str]


@dataclass(frozen=True, slots=True)
class ToldStep:
    """A step with all that page, sheet and terminal say of it."""

    id: str
    kind: str
    section: str
    verb: Value
    title: Value
    part: str
    side: str
    on_side: str
    text: Sequence[Value]
    motion: Value
    directed: bool
    place: Sequence[places.Placed]
    area: str
    fasteners: Sequence[ShownFastenerLine]
    tethers: Sequence[ShownTetherLine]
    cautions: Sequence[words.Caution]
    minutes: float | None
    time: Value
    wait: ShownWait | None
    tools: Sequence[Value]
    unknown: bool
    conflicts: Sequence[Value]
    state: Mapping[str, str]
    state_words: Value
    turns: Sequence[Sequence[str]]
    needs: Mapping[str, str]
    uses: Sequence[Value]
    materials: Sequence[Purchase]
    new: bool
    untimed: int
    source: Sequence[str]
