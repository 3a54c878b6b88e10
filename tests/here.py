"""A crew that works in the test's own process, where what is replaced or noted can be seen."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from undertrim.work.crew import Crew
from undertrim.work.worker import Trouble, answer


class Here(Crew):
    """No workers, and so no limits: the same answers."""

    def each(self, work: Callable[[Any], Any], items: Sequence[Any]) -> Iterator[Any]:
        for item in items:
            found = answer(work, item, self.allowed)
            if isinstance(found, Trouble):
                raise found.error
            yield found
