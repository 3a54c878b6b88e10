"""Worker processes that do one thing at a time, watched from outside.

The pools of the standard library end as a whole when one process dies, and cannot end a single piece of work that takes too long.
"""

import multiprocessing
import os
import signal
import sys
import time
import warnings
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from types import TracebackType
from typing import Any, Generic, TypeVar

from undertrim.words import Value, message
from undertrim.work.limits import Limits, limits
from undertrim.work.worker import Failed, Fault, Trouble, labour

Item = TypeVar("Item")
Result = TypeVar("Result")

__all__ = ["Crew", "Failed", "Fault"]

FORKS = sys.platform == "linux"
"""A copy of this process knows all that this one has loaded; elsewhere a copy is not safe (macOS) or not to be had."""
_CONTEXT: Any = multiprocessing.get_context("fork" if FORKS else "spawn")


@dataclass(slots=True)
class _Hand:
    """One worker process, the line to it, and what it does: the number of the item, and when it began."""

    process: Any
    line: Connection
    number: int = 0
    since: float = 0.0

    def end(self) -> int | None:
        """Make sure it has ended, and give its exit code."""
        self.process.kill()
        self.process.join()
        code: int | None = self.process.exitcode
        self.process.close()
        self.line.close()
        return code


class Crew:
    """Workers that live until the crew is closed; they start when there is something to do."""

    def __init__(self, allowed: Limits | None = None, size: int | None = None) -> None:
        self.allowed = allowed or limits()
        self._size = size or os.cpu_count() or 1
        self._hands: list[_Hand] = []

    def __enter__(self) -> "Crew":
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    def close(self) -> None:
        """End every worker, at work or not."""
        while self._hands:
            self._hands.pop().end()

    def each(self, work: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result | Failed]:
        """The result of `work` for each item in turn, or why there is none.

        `work` and the items must be fit to be sent to another process. Raises OSError where the machine failed, not the item.
        """
        shared = _Round(self, work, items)
        try:
            yield from shared.results()
        finally:
            if shared.busy:
                self.close()  # they are still at what nobody waits for any more

    def hands(self, items: int) -> list[_Hand]:
        """As many workers as have something to do."""
        while len(self._hands) < min(self._size, items):
            self._hands.append(self._start())
        return self._hands[:items]

    def renew(self, hand: _Hand) -> int | None:
        """Put a fresh process in the place of a worker's, and give the exit code of the old one."""
        code = hand.end()
        self._hands.remove(hand)
        fresh = self._start()
        hand.process, hand.line = fresh.process, fresh.line
        self._hands.append(hand)
        return code

    def _start(self) -> _Hand:
        ours, theirs = _CONTEXT.Pipe()
        copied = [ours, *(hand.line for hand in self._hands)] if FORKS else []
        process = _CONTEXT.Process(target=labour, args=(theirs, copied, self.allowed), daemon=True)
        with warnings.catch_warnings():
            warnings.simplefilter(
                "ignore", DeprecationWarning
            )  # newer Pythons warn of threads, none of which the copy uses
            process.start()
        theirs.close()
        return _Hand(process, ours)


class _Round(Generic[Item, Result]):
    """One list of things to do, shared out one by one."""

    def __init__(self, crew: Crew, work: Callable[[Item], Result], items: Sequence[Item]) -> None:
        self._crew, self._work, self._items = crew, work, items
        self._left = deque(range(len(items)))
        self._done: dict[int, Result | Failed] = {}
        self.busy: list[_Hand] = []

    def results(self) -> Iterator[Result | Failed]:
        for hand in self._crew.hands(len(self._items)):
            self._next(hand)
        for number in range(len(self._items)):
            while number not in self._done:
                self._await()
            yield self._done.pop(number)

    def _next(self, hand: _Hand) -> None:
        """Give a worker something to do, if there is any."""
        if not self._left:
            return
        hand.number, hand.since = self._left.popleft(), time.monotonic()
        if not hand.process.is_alive():  # it was ended while it had nothing to do, which is no item's fault
            self._crew.renew(hand)
        hand.line.send((self._work, self._items[hand.number]))
        self.busy.append(hand)

    def _await(self) -> None:
        """Take what the next workers say, or end those whose time is over."""
        oldest = min(hand.since for hand in self.busy)
        ready = wait(
            [hand.line for hand in self.busy], max(0.0, oldest + self._crew.allowed.seconds - time.monotonic())
        )
        for hand in [hand for hand in self.busy if hand.line in ready] or self._late():
            self.busy.remove(hand)
            self._done[hand.number] = self._taken(hand) if hand.line in ready else self._stopped(hand)
            self._next(hand)

    def _late(self) -> list[_Hand]:
        end = time.monotonic() - self._crew.allowed.seconds
        return [hand for hand in self.busy if hand.since <= end]

    def _stopped(self, hand: _Hand) -> Failed:
        self._crew.renew(hand)
        return Failed(Fault.TIME, message("work/time", seconds=self._crew.allowed.seconds))

    def _taken(self, hand: _Hand) -> Result | Failed:
        try:
            found, replace = hand.line.recv()
        except (EOFError, ConnectionError):
            hand.process.join(1)  # it lets go of the line a little before it has ended
            return Failed(Fault.ENDED, message("work/ended", how=_how(self._crew.renew(hand))))
        if replace:
            self._crew.renew(hand)
        if isinstance(found, Trouble):
            raise found.error
        answer: Result | Failed = found
        return answer


def _how(code: int | None) -> Value:
    """How a process ended, for whoever reports it."""
    if code is not None and code < 0:
        return signal.Signals(-code).name
    return message("work/code", code=str(code))
