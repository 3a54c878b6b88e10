"""The workers of a Dask cluster, in the place of processes on this machine.

They are given places in folders, not files: every worker must have this very program, and see the collection at the same place, on a share.
How much memory a worker may take, how its process is watched and who may talk to it is the cluster's own affair.
"""

import ctypes
import os
import threading
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.words import message
from undertrim.work.limits import Limits, limits
from undertrim.work.refused import Refused
from undertrim.work.worker import Failed, Fault, Trouble, answer
from undertrim.work.workers import Item, Result

PATIENCE = 10
"""Seconds to wait for a scheduler that does not answer."""


class NoCluster(Refused):
    """There is no cluster at the address, or it is not fit for this work; the message says why."""


class Cluster:
    """The workers at the address of a Dask scheduler (`tcp://desk:8786`); `environment` is what they are to have in theirs.

    Raises NoCluster where none answers, none works there, or one has another program or does not see `folder`.
    """

    def __init__(
        self, address: str, folder: Path, environment: Mapping[str, str], allowed: Limits | None = None
    ) -> None:
        self._address = address
        self._client = _connected(address)
        self._environment, self._allowed = dict(environment), allowed or limits()
        try:
            self._refuse_strangers(folder)
        except BaseException:
            self.close()
            raise

    def each(self, work: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result | Failed]:
        """See `Workers`."""
        answered = partial(_answered, work, self._allowed, self._environment)
        waiting = self._client.map(answered, items, pure=False)
        try:
            for number, future in enumerate(waiting):
                found = self._awaited(future)
                waiting[number] = None  # so that the cluster need not keep what was taken
                yield _taken(found)
        finally:
            self._client.cancel([future for future in waiting if future is not None])

    def _awaited(self, future: Any) -> Any:
        """What a worker answered; a cluster that lost all its workers is not waited for."""
        from distributed import KilledWorker

        while True:
            try:
                return future.result(timeout=PATIENCE)
            except KilledWorker:
                return Failed(Fault.ENDED, message("work/ended", how=message("work/in-the-cluster")))
            except TimeoutError:
                if not self._client.scheduler_info(n_workers=-1)["workers"]:
                    raise NoCluster(message("work/no-workers", address=self._address)) from None

    def close(self) -> None:
        """Leave the cluster; what nobody waits for any more is not done."""
        self._client.close()

    def _refuse_strangers(self, folder: Path) -> None:
        seen = self._client.run(_seen, str(folder))
        if not seen:
            raise NoCluster(message("work/no-workers", address=self._address))
        own = resources.program()
        for worker, (program, there) in sorted(seen.items()):
            if program != own:
                raise NoCluster(message("work/other-program", worker=worker))
            if not there:
                raise NoCluster(message("work/out-of-sight", worker=worker, folder=str(folder)))


def _connected(address: str) -> Any:
    try:
        from distributed import Client
    except ImportError as error:
        raise NoCluster(message("work/no-dask")) from error
    try:
        connect: Any = Client  # it has no types
        return connect(address, timeout=PATIENCE, set_as_default=False)
    except (OSError, ValueError) as error:
        raise NoCluster(message("work/no-cluster", address=address, why=str(error) or type(error).__name__)) from error


def _seen(folder: str) -> tuple[str, bool]:
    """What a worker has: its program, and whether it sees a folder."""
    return resources.program(), Path(folder).is_dir()


class _Late(BaseException):
    """The time for a piece of work is over. No error, so that no piece of work takes it for one of its own."""


def _answered(work: Callable[[Any], Any], allowed: Limits, environment: Mapping[str, str], item: Any) -> Any:
    """The result of `work`, or why there is none, as a worker of ours would say it."""
    os.environ.update(environment)
    watch = _Watch(allowed.seconds)
    try:
        with watch:
            return answer(work, item, allowed)
    except _Late:
        return Failed(Fault.TIME, message("work/time", seconds=allowed.seconds))


class _Watch:
    """Ends what this thread does within it after some seconds: the worker is not ours, so that its process cannot be ended instead.

    The thread gets an exception set from another one, which Python raises at its next instruction.
    """

    def __init__(self, seconds: float) -> None:
        self._thread = threading.get_ident()
        self._over = threading.Lock()
        self._timer = threading.Timer(seconds, self._end)
        self._timer.daemon = True

    def __enter__(self) -> None:
        self._timer.start()

    def __exit__(self, *_: object) -> None:
        self._timer.cancel()
        self._over.acquire()  # never let go of: from here on it is too late to end anything

    def _end(self) -> None:
        if self._over.acquire(blocking=False):
            ctypes.pythonapi.PyThreadState_SetAsyncExc(ctypes.c_ulong(self._thread), ctypes.py_object(_Late))
            self._over.release()


def _taken(found: Any) -> Any:
    if isinstance(found, Trouble):
        raise found.error
    return found
