"""Who does many pieces of work: the processes of this machine, or a cluster."""

from collections.abc import Callable, Iterator, Sequence
from typing import Protocol, TypeVar

from undertrim.work.worker import Failed

Item = TypeVar("Item")
Result = TypeVar("Result")


class Workers(Protocol):
    """Workers that stay until they are closed."""

    def each(self, work: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result | Failed]:
        """The result of `work` for each item in turn, or why there is none.

        `work` and the items must be fit to be sent to another process. Raises OSError where the machine failed, not the item.
        """

    def close(self) -> None:
        """Let the workers go, at work or not."""
