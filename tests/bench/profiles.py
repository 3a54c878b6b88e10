"""Where the time goes for one record: the functions that took most by themselves."""

import cProfile
import pstats
import sys
from collections.abc import Callable

from herd import Herd

from undertrim.check import runner
from undertrim.publish.facts import vehicle as facts

REPEATS = 20
MOST = 14


def profiles(herd: Herd) -> None:
    """Print the profile of reading, checking and deriving the largest of the records."""
    path = max(herd.paths, key=lambda path: path.stat().st_size)
    entry = herd.workspace.load(path)
    _profile(f"read {path.name}", lambda: herd.workspace.load(path))
    _profile(f"check {path.name}", lambda: runner.check_entry(entry))
    _profile(f"facts of {path.name}", lambda: facts.vehicle(entry))


def _profile(title: str, work: Callable[[], object]) -> None:
    """Print the functions that took most of `work`, which is warmed up first."""
    work()
    profile = cProfile.Profile()
    profile.enable()
    for _ in range(REPEATS):
        work()
    profile.disable()
    sys.stdout.write(f"\n== {title}, {REPEATS} times\n")
    pstats.Stats(profile).strip_dirs().sort_stats("cumulative").print_stats(MOST)
    pstats.Stats(profile).strip_dirs().sort_stats("tottime").print_stats(MOST)
