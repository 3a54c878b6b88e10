"""What an opening needs by its kind, from the `usual.toml` in the room of the kind; a record adds only what is special in its car.

`label` is the kind in words, `needs` the state of the car, `tools` (data/tools.toml) and `used_up` what any such job takes, `install` and
`test` its steps in their order.
`joins` marks the step in which the plugs of the replaced unit end: joined, left off or bridged (the last one if none is marked).
`only` limits a step to openings for which that is true: a word of the kind's own (`AnyOpening.asks`), `window` (one moves behind it) or
`window-unknown` (it is in a door, and whether a window moves there is not recorded).
A test says what it needs: `states` of the car, and what must be joined because the test `uses` it (data/purposes.toml).
"""

from collections.abc import Sequence
from typing import Any

from undertrim.resources import table
from undertrim.words import Word, word


def usual_for(kind: str) -> dict[str, Any]:
    """The usual data of one kind of opening."""
    return table(f"kinds/{kind}")


def usual_word(kind: str, *entry: str) -> Word:
    """A word of the usual data of one kind of opening: `usual_word("receiver", "label")`."""
    return word(f"kinds/{kind}", *entry)


def used_up(kind: str) -> Sequence[Word]:
    """What any job of this kind uses up."""
    return [usual_word(kind, "used_up", name, "label") for name in usual_for(kind)["used_up"]]
