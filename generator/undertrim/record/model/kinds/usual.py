"""What an opening needs by its kind, from the `usual.toml` in the room of the kind; a record adds only what is special in its car.

`label` is the kind in words, `needs` the state of the car, `tools` and `used_up` what any such job takes, `install` and `test` its steps.
`joins` marks the step in which the plugs of the replaced unit end: joined, left off or bridged (the last one if none is marked).
`only` limits a step to openings for which that is true: a word of the kind's own (`AnyOpening.asks`), `window` (one moves behind it) or
`window-unknown` (it is in a door, and whether a window moves there is not recorded).
A test says what it needs: `states` of the car, and what must be joined because the test `uses` it (data/purposes.toml).
"""

import tomllib
from functools import cache
from typing import Any

from undertrim.resources import inside


@cache
def usual_for(kind: str) -> dict[str, Any]:
    """The usual data of one kind of opening."""
    return tomllib.loads(inside("record", "model", "kinds", kind, "usual.toml").read_text(encoding="utf-8"))
