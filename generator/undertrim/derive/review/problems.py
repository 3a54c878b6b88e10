"""What the check finds that it did not find before."""

from collections.abc import Sequence

from undertrim.record.problem import Problem
from undertrim.words import ENGLISH, sentence


def apart(before: Sequence[Problem], after: Sequence[Problem]) -> tuple[tuple[Problem, ...], tuple[Problem, ...]]:
    """What is new and what is gone; where in the file it stands does not count."""
    return _less(after, before), _less(before, after)


def _less(some: Sequence[Problem], others: Sequence[Problem]) -> tuple[Problem, ...]:
    left = [_told(one) for one in others]
    found = []
    for one in some:
        if _told(one) in left:
            left.remove(_told(one))
        else:
            found.append(one)
    return tuple(found)


def _told(one: Problem) -> tuple[str, str]:
    return one.rule, sentence(one.said, ENGLISH)
