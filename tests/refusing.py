"""What calculators refuse and say, in words, as people read it."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager

import pytest

from undertrim.derive.electrical.bounds import Refused
from undertrim.words import Value, say, sentence


@contextmanager
def refused(said: str) -> Iterator[pytest.ExceptionInfo[Refused]]:
    """What is done within must be refused, in words that hold these."""
    with pytest.raises(Refused) as error:
        yield error
    assert said in sentence(error.value.said)


def lines(values: Iterable[Value]) -> list[str]:
    """Each in words."""
    return [say(value) for value in values]
