"""Spoils the shipped records at random and does with each what the commands do: nothing may crash, hang, or stop another file.

Run it with `make fuzz`. Each mutant is a case of a seed: `--seed 7 --case 1234` makes one again and shows all that is known of it.
What is found is made smaller, written to `.undertrim/fuzz/`, and said once for each place in the program.
"""

import argparse
import os
import secrets
import sys
import time
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from mutants import ROOT, Case, Mutant, mutant
from shrinking import smaller
from trials import Found, Tried, base, failed, tried

from undertrim.work.crew import Crew, Failed, Fault
from undertrim.work.limits import Limits

BATCH = 200
"""Cases given out at once; between them the clock is looked at."""
WAIT = 60
"""Seconds on the clock after which a worker is ended."""
MEGABYTES = 1500


@dataclass
class Tally:
    """What a run has met: mutants, those that passed, and each fault with its first case and how often it came."""

    cases: int = 0
    passed: int = 0
    faults: dict[tuple[str, str], tuple[Case, Found]] = field(default_factory=dict)
    often: dict[tuple[str, str], int] = field(default_factory=dict)

    def add(self, case: Case, result: Tried) -> bool:
        """Count one; whether it shows a fault that is new."""
        self.cases += 1
        self.passed += result.passed
        if result.found is None:
            return False
        key = (result.found.stage, result.found.what)
        self.often[key] = self.often.get(key, 0) + 1
        return self.faults.setdefault(key, (case, result.found))[0] == case


def main() -> int:
    """Run one case, or as many as the time allows; exit 1 if anything was found."""
    options = arguments()
    if options.case is not None:
        return again(Case(options.seed, options.case))
    started = time.monotonic()
    say(f"seed {options.seed}, {options.minutes:g} minutes, {options.workers} at once\n")
    tally = run(options.seed, started + options.minutes * 60, options.workers, options.first)
    for (stage, what), times in tally.often.items():
        say(f"{times} times: {stage}: {what}\n")
    say(
        f"{tally.cases} mutants in {time.monotonic() - started:.0f} s: {tally.passed} passed the check, {len(tally.faults)} faults\n"
    )
    return 1 if tally.faults else 0


def arguments() -> argparse.Namespace:
    """The command line's options."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--minutes", type=float, default=1.0, help="how long (default: 1)")
    parser.add_argument(
        "--seed", type=int, default=secrets.randbelow(1_000_000), help="of the draws (default: another each time)"
    )
    parser.add_argument("--case", type=int, help="make this one case again and say what becomes of it")
    parser.add_argument("--first", type=int, default=0, help="the number of the first case (default: 0)")
    parser.add_argument(
        "--workers", type=int, default=os.cpu_count() or 1, help="processes (default: one for each processor)"
    )
    return parser.parse_args()


def run(seed: int, end: float, workers: int, first: int = 0) -> Tally:
    """Try case after case until the clock shows `end`, or somebody has seen enough (Ctrl-C)."""
    base()  # read once, before the workers are copied from this process
    tally = Tally()
    with suppress(KeyboardInterrupt), Crew(Limits(WAIT, MEGABYTES), workers) as crew:
        while time.monotonic() < end:
            start = first + tally.cases
            for case, result in results(crew, [Case(seed, number) for number in range(start, start + BATCH)], end):
                if tally.add(case, result):
                    report(case, result)
    return tally


def results(crew: Crew, cases: list[Case], end: float) -> Iterator[tuple[Case, Tried]]:
    """What becomes of each case, until the clock shows `end`."""
    for case, result in zip(cases, crew.each(try_case, cases), strict=False):
        yield case, _sure(case, result) if isinstance(result, Failed) else result
        if time.monotonic() > end:
            return


def _sure(case: Case, result: Failed) -> Tried:
    """What a worker that failed tells of its case; a clock that ran out may blame the machine's load on it, so then it is tried once more, by itself."""
    if result.fault is not Fault.TIME:
        return Tried(passed=False, found=failed(result))
    with Crew(Limits(WAIT, MEGABYTES), 1) as crew:
        once_more = next(crew.each(try_case, [case]))
    return Tried(passed=False, found=failed(once_more)) if isinstance(once_more, Failed) else once_more


def try_case(case: Case) -> Tried:
    """One case from its number to its end; and around it."""
    return tried(mutant(case), dear=case.whole)


def report(case: Case, result: Tried) -> None:
    """Say what was found, and leave the smallest file that shows it."""
    assert result.found is not None
    path = kept(case, _small(case, result.found))
    say(f"seed {case.seed} case {case.number}: {result.found.stage}: {result.found.what}\n    {path}\n")
    say("".join(f"    {line}\n" for line in result.found.detail.splitlines()[-6:]))


def _small(case: Case, found: Found) -> Mutant:
    """The case made smaller by a crew of its own, since it may end its worker."""
    with Crew(Limits(WAIT, MEGABYTES), 1) as crew:
        return smaller(mutant(case), partial(_same, crew, found, case.whole))


def _same(crew: Crew, found: Found, dear: bool, one: Mutant) -> bool:
    result = next(crew.each(partial(tried, dear=dear), [one]))
    now = failed(result) if isinstance(result, Failed) else result.found
    return now is not None and (now.stage, now.what) == (found.stage, found.what)


def kept(case: Case, one: Mutant) -> Path:
    """The file of a mutant, in a folder that git does not look at."""
    path = ROOT / ".undertrim" / "fuzz" / f"{case.seed}-{case.number}" / one.path.name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(one.content)
    return path


def again(case: Case) -> int:
    """Make one case again, in this process, where a debugger can look."""
    one = mutant(case)
    say(f"{kept(case, one)} in the place of {one.path.relative_to(ROOT)}: {one.made}\n")
    result = try_case(case)
    if result.found is None:
        say("passes the check\n" if result.passed else "has errors, as it should\n")
        return 0
    say(f"{result.found.stage}: {result.found.what}\n{result.found.detail}\n")
    return 1


def say(text: str) -> None:
    """Write at once, also into a pipe."""
    sys.stdout.write(text)
    sys.stdout.flush()


if __name__ == "__main__":
    sys.exit(main())
