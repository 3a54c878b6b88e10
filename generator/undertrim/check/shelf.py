"""The stock that may be offered: gear whose record has no errors."""

from collections.abc import Callable
from functools import partial

from undertrim.check.runner import check_entry
from undertrim.derive.fit.stock import Stock, read
from undertrim.record.problem import Level
from undertrim.record.store import Entry, Workspace


def stock(workspace: Workspace, seen: Callable[[Entry], object] | None = None) -> Stock:
    """Read every gear record of the workspace; what has an error, in its form or by a rule for one record, is left out and named.

    A size that cannot be true would be reckoned with as if it were. What has the right form is shown to `seen` as it is read.
    """
    return read(workspace, partial(_shown, seen) if seen else _sound)


def _shown(seen: Callable[[Entry], object], entry: Entry) -> bool:
    seen(entry)
    return _sound(entry)


def _sound(entry: Entry) -> bool:
    return not any(problem.level is Level.ERROR for problem in check_entry(entry))
