"""Workers: every item gets its answer, whatever becomes of the others."""

import errno
import faulthandler
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from undertrim.words import say
from undertrim.work.crew import Crew, Failed, Fault
from undertrim.work.limits import MOST, BadLimit, Limits, limits
from undertrim.work.refused import Refused

SMALL = Limits(seconds=1, megabytes=400)
ROOMY = Limits(seconds=60, megabytes=20_000)
"""A worker begins as a copy of the process that runs the tests, which may be large by now: with this it is not worn at once."""


def ordinary(number: int) -> int:
    return number * 2


def odd(number: int) -> object:
    """What a single piece of work may do to its worker."""
    deeds: dict[int, Callable[[], object]] = {
        1: lambda: time.sleep(60),
        3: lambda: bytearray(10**9),
        5: abort,
        7: lambda: odd_error(),
        9: lambda: os._exit(0),
        11: lambda: odd_depth(11),
        13: lambda: lambda: None,
    }
    return deeds[number]() if number in deeds else number * 2


def abort() -> None:
    faulthandler.disable()  # pytest has it on: it would write where each thread was into the answers of the tests
    os.abort()


def odd_error() -> None:
    raise ValueError("hm")


def odd_depth(number: int) -> int:
    return odd_depth(number) + 1


def full(_: int) -> None:
    raise OSError(errno.ENOSPC, "full", "/x")


def vanished(_: int) -> None:
    Path("/nowhere/at/all").read_bytes()


@pytest.mark.parametrize("size", [1, 2, 5])
def test_one_that_fails_costs_itself_alone(size: int) -> None:
    with Crew(SMALL, size) as crew:
        found = list(crew.each(odd, range(15)))
    assert [answer for answer in found if not isinstance(answer, Failed)] == [
        n * 2 for n in (0, 2, 4, 6, 8, 10, 12, 14)
    ]
    failed = {number: answer for number, answer in enumerate(found) if isinstance(answer, Failed)}
    assert {number: answer.fault for number, answer in failed.items()} == {
        1: Fault.TIME, 3: Fault.MEMORY, 5: Fault.ENDED, 7: Fault.ERROR, 9: Fault.ENDED, 11: Fault.ERROR, 13: Fault.ERROR,
    }  # fmt: skip
    assert say(failed[1].said) == "takes longer than 1 seconds"
    assert say(failed[3].said) == "needs more than 400 MB of memory"
    assert say(failed[5].said) == "ended the process that worked on it (SIGABRT)"
    assert say(failed[7].said) == "ValueError: hm"
    assert "odd_error" in failed[7].trace


def test_a_crew_is_there_for_more_than_one_round() -> None:
    with Crew(ROOMY, 2) as crew:
        assert list(crew.each(ordinary, range(50))) == [n * 2 for n in range(50)]
        first = next(iter(crew.each(pid, [0])))
        assert next(iter(crew.each(pid, [0]))) == first
        assert list(crew.each(ordinary, [])) == []


def pid(_: int) -> int:
    return os.getpid()


def test_a_full_disk_is_no_fault_of_the_item() -> None:
    with Crew(SMALL, 1) as crew, pytest.raises(OSError, match="full"):
        list(crew.each(full, range(3)))


def test_a_file_that_goes_away_is() -> None:
    with Crew(SMALL, 1) as crew:
        [found] = crew.each(vanished, [0])
    assert found == Failed(Fault.ERROR, "No such file or directory: /nowhere/at/all")


def test_a_worker_that_ended_while_idle_is_replaced() -> None:
    with Crew(ROOMY, 1) as crew:
        [worker] = crew.each(pid, [0])
        assert isinstance(worker, int)
        os.kill(worker, 9)
        time.sleep(0.3)
        assert list(crew.each(ordinary, [4, 5])) == [8, 10]


def test_nobody_works_on_when_the_rest_is_not_wanted() -> None:
    crew = Crew(Limits(60, 400), 2)
    results = crew.each(odd, [0, 1])
    assert next(results) == 0
    began = time.monotonic()
    results.close()  # type: ignore[attr-defined]
    assert crew._hands == []
    assert time.monotonic() - began < 30


def touched(megabytes: int) -> int:
    return len(bytearray(b"x") * (megabytes * 1_000_000))


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux counts what a process takes")
def test_what_a_worker_was_born_with_counts_for_no_file() -> None:
    ballast = [bytearray(b"x") * 100_000_000 for _ in range(6)]
    with Crew(Limits(60, 400), size=1) as crew:
        assert list(crew.each(touched, [100, 100])) == [100_000_000] * 2
        (much,) = crew.each(touched, [600])
    assert isinstance(much, Failed)
    assert much.fault is Fault.MEMORY
    assert len(ballast) == 6


def test_limits_can_be_set() -> None:
    assert limits({}) == Limits()
    assert limits({"UNDERTRIM_TIME_LIMIT": " 7 ", "UNDERTRIM_MEMORY_LIMIT": "300"}) == Limits(7, 300)


@pytest.mark.parametrize("typed", ["0", "-1", "many", "1.5", str(MOST + 1), "9" * 5000, "٣"])
@pytest.mark.parametrize("name", ["UNDERTRIM_TIME_LIMIT", "UNDERTRIM_MEMORY_LIMIT"])
def test_a_bad_limit_is_said(name: str, typed: str) -> None:
    assert issubclass(BadLimit, Refused)
    with pytest.raises(BadLimit, match=f"{name} is '.*': set it to a whole number from 1 to 1000000"):
        limits({name: typed})
