"""What an opening needs by its kind, from the `usual.toml` in the room of the kind; a record adds only what is special in its car.

`label` is the kind in words, `needs` the state of the car, `tools` (data/tools.toml) and `used_up` what any such job takes, `install` and
`test` its steps in their order, `clearances` the usual room around its gear.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

import cattrs

from undertrim.resources import table
from undertrim.words import Word, word


@dataclass(frozen=True, slots=True)
class UsualStep:
    """A usual step of fitting or testing.

    `only` limits it to openings for which that is true: a word of the kind's own (`AnyOpening.asks`), `window` (one moves behind it) or
    `window-unknown` (it is in a door, and whether a window moves there is not recorded). In the one that `joins` the plugs of the replaced
    unit end: joined, left off or bridged (in the last one if none is marked); the one that `builds` tells how kits are built up;
    one that comes `last` waits until all gear of the visit is in; one that is `shared` is done once for all openings of a visit that share
    what it is about (`AnyOpening.shares`); in one that goes `along`, cable is laid along the run of the opening (`AnyOpening.along`).
    A test says what it needs: `states` of the car, and what must be joined because it `uses` it (data/purposes.toml).
    """

    name: str
    text: str
    only: str = ""
    joins: bool = False
    builds: bool = False
    last: bool = False
    shared: bool = False
    along: bool = False
    states: Mapping[str, str] = field(default_factory=dict)
    uses: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Clearance:
    """Usual room around gear: a length as typed, and the least and the greatest that are usual, where it `spreads`."""

    label: str
    size: str
    spreads: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True)
class Thing:
    """What any job of a kind uses up."""

    label: str


@dataclass(frozen=True, slots=True)
class Usual:
    """All that is usual for one kind of opening."""

    label: str
    needs: dict[str, str]
    install: Mapping[str, UsualStep]
    test: Mapping[str, UsualStep]
    tools: tuple[str, ...] = ()
    used_up: Mapping[str, Thing] = field(default_factory=dict)
    clearances: Mapping[str, Clearance] = field(default_factory=dict)


@cache
def usual_for(kind: str) -> Usual:
    """The usual data of one kind of opening. Raises ValueError, which names the file, for data of another shape."""
    return read(kind, table(f"kinds/{kind}"))


def read(kind: str, data: Mapping[str, object]) -> Usual:
    """Usual data from the table of one kind. Raises ValueError, which names the file and what is wrong in it."""
    try:
        return cattrs.Converter(forbid_extra_keys=True).structure(data, Usual)
    except cattrs.BaseValidationError as error:
        wrong = "; ".join(cattrs.transform_error(error, path="it"))
        raise ValueError(f"record/model/kinds/{kind}/usual.toml: {wrong}") from error


def usual_word(kind: str, *entry: str) -> Word:
    """A word of the usual data of one kind of opening: `usual_word("receiver", "label")`."""
    return word(f"kinds/{kind}", *entry)


def used_up(kind: str) -> Sequence[Word]:
    """What any job of this kind uses up."""
    return [usual_word(kind, "used_up", name, "label") for name in usual_for(kind).used_up]
