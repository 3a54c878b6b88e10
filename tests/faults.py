"""Lets the n-th thing that a program does to the disk go wrong: each write, flush, rename, removal and new folder counts as one.

Patched are the calls of `os` and `io` that everything in Python comes down to, so that other libraries are met too.
"""

import builtins
import errno
import io
import os
import signal
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from typing import Any, TypeVar
from unittest import mock

CHANGING = ("rename", "replace", "mkdir", "unlink", "remove", "rmdir", "fsync", "symlink", "link", "truncate")


@dataclass
class Fault:
    """What happens at the `at`-th thing done to the disk; `met` are those seen so far."""

    at: int
    strike: Callable[[str], None]
    met: list[str] = field(default_factory=list)

    def pass_(self, what: str) -> None:
        self.met.append(what)
        if len(self.met) == self.at:
            self.strike(what)

    @property
    def struck(self) -> bool:
        return len(self.met) >= self.at


@dataclass
class Halt:
    """Looks at the disk before each thing done to it, and lets it be done: what is there is what a kill at that point leaves."""

    look: Callable[[str], None]
    _looking: bool = False

    def pass_(self, what: str) -> None:
        if not self._looking:
            self._looking = True
            self.look(what)
            self._looking = False


def full_disk(what: str) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), what)


def killed(_: str) -> None:
    os.kill(os.getpid(), signal.SIGKILL)


class _Writing:
    """A file open for writing: a write that fails leaves half of what it was given."""

    def __init__(self, file: Any, fault: Fault | Halt, name: str) -> None:
        self._file, self._fault, self._name = file, fault, name

    def __getattr__(self, name: str) -> Any:
        return getattr(self._file, name)

    def __enter__(self) -> "_Writing":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def __iter__(self) -> Iterator[Any]:
        return iter(self._file)

    def write(self, data: Any) -> Any:
        try:
            self._fault.pass_(f"write {self._name}")
        except OSError:
            self._file.write(data[: len(data) // 2])
            raise
        return self._file.write(data)

    def flush(self) -> None:
        self._fault.pass_(f"flush {self._name}")
        self._file.flush()

    def close(self) -> None:
        if not self._file.closed:
            self._file.close()
            self._fault.pass_(f"close {self._name}")


_Any = TypeVar("_Any", Fault, Halt)


@contextmanager
def striking(fault: _Any) -> Iterator[_Any]:
    """Counts what is done to the disk inside, and lets one of it go wrong."""
    opened = io.open

    def open_(file: Any, mode: str = "r", *args: Any, **kwargs: Any) -> Any:
        if not set(mode) & set("wax+"):
            return opened(file, mode, *args, **kwargs)
        fault.pass_(f"open {file}")
        return _Writing(opened(file, mode, *args, **kwargs), fault, str(file))

    def counted(name: str) -> Callable[..., Any]:
        plain = getattr(os, name)

        def call(*args: Any, **kwargs: Any) -> Any:
            fault.pass_(f"{name} {args[0]}")
            return plain(*args, **kwargs)

        return call

    with ExitStack() as patches:
        patches.enter_context(mock.patch.object(io, "open", open_))
        patches.enter_context(mock.patch.object(builtins, "open", open_))
        for name in CHANGING:
            patches.enter_context(mock.patch.object(os, name, counted(name)))
        yield fault
