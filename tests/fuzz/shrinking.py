"""Makes a mutant smaller while the same thing goes wrong with it, so that a person sees what does it."""

import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

from mutants import Mutant, as_file

from undertrim.record.source import read_bytes

SECONDS = 30.0
"""So long is tried."""

Same = Callable[[Mutant], bool]


def smaller(mutant: Mutant, same: Same, seconds: float = SECONDS) -> Mutant:
    """The mutant with as much left out as can be in so long; `same` tells whether it still fails as it did."""
    end = time.monotonic() + seconds
    source = read_bytes(mutant.content, mutant.path)
    as_data = replace(mutant, content=as_file(source.data))
    if source.data is not None and same(as_data):
        return _less(as_data, source.data, same, end)
    return _shorter(mutant, same, end)


def _less(mutant: Mutant, data: Any, same: Same, end: float) -> Mutant:
    """Leaves out one entry after the other, large ones first."""
    for holder, at in list(_entries(data)):
        if time.monotonic() > end:
            break
        if at not in (holder if isinstance(holder, dict) else range(len(holder))):
            continue
        before = dict(holder) if isinstance(holder, dict) else list(holder)
        del holder[at]
        if not same(fewer := replace(mutant, content=as_file(data))):
            _put_back(holder, before)
        else:
            mutant = fewer
    return mutant


def _put_back(holder: Any, before: Any) -> None:
    """What was there, in its order."""
    if isinstance(holder, dict):
        holder.clear()
        holder.update(before)
    else:
        holder[:] = before


def _entries(data: Any) -> Iterator[tuple[Any, Any]]:
    """Every entry below, the outer ones first, a list's last first."""
    waiting = [data]
    while waiting:
        holder = waiting.pop(0)
        if isinstance(holder, dict | list):
            inner = list(holder) if isinstance(holder, dict) else range(len(holder) - 1, -1, -1)
            yield from ((holder, at) for at in inner)
            waiting.extend(holder.values() if isinstance(holder, dict) else holder)


def _shorter(mutant: Mutant, same: Same, end: float) -> Mutant:
    """Leaves out lines, in halves, quarters and so on."""
    lines = mutant.content.splitlines(keepends=True)
    size = len(lines) // 2
    while size and time.monotonic() < end:
        start = 0
        while start < len(lines) and time.monotonic() < end:
            left = lines[:start] + lines[start + size :]
            if same(fewer := replace(mutant, content=b"".join(left))):
                lines, mutant = left, fewer
            else:
                start += size
        size //= 2
    return mutant
