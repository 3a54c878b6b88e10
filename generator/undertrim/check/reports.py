"""Prints a report: as text for people, where what repeats is said once; and all of it as JSON for programs, as annotations for a pull request."""

import json
from collections.abc import Callable, Iterable, Sequence
from dataclasses import asdict

from undertrim.check.runner import Report
from undertrim.record.problem import Level, Problem, printable
from undertrim.words import Items, message, say

_FURTHER = 3
"""So many more places of a message that repeats are named, the rest counted."""


def text(report: Report) -> str:
    """One line per message with its hint and further places below, and a closing count; what repeats is said once."""
    return "\n".join([*lines(report.problems), _summary(report), *_earlier(report)]) + "\n"


def lines(problems: Iterable[Problem]) -> list[str]:
    """The same without the count."""
    alike: dict[tuple[str, ...], list[Problem]] = {}
    for problem in problems:
        alike.setdefault((problem.level, problem.rule, problem.message, problem.hint), []).append(problem)
    return [line for (_, _, *said), same in alike.items() for line in _text_lines(said[0], said[1], same)]


def _text_lines(said: str, hint: str, same: Sequence[Problem]) -> list[str]:
    """The lines of one message, by all that say it."""
    first = same[0]
    lines = [f"{_place(first)}: {say(LEVELS[first.level])}: {said} ({first.rule})"]
    if hint:
        lines.append(f"    {hint}")
    return [*lines, f"    {_further(same)}"] if len(same) > 1 else lines


LEVELS = {Level.ERROR: message("check/error"), Level.WARNING: message("check/warning")}


def _further(same: Sequence[Problem]) -> str:
    named = Items(tuple(_place(problem) for problem in same[1 : _FURTHER + 1]), "comma")
    rest = len(same) - 1 - len(named.values)
    if rest:
        return say(message("check/times-and-more", count=len(same), places=named, rest=rest))
    return say(message("check/times", count=len(same), places=named))


def _place(problem: Problem) -> str:
    return f"{printable(str(problem.file))}:{problem.position.line}:{problem.position.column}"


def _summary(report: Report) -> str:
    if not report.problems:
        return say(message("check/no-problems", count=report.records))
    errors = message("check/errors", count=report.errors)
    warnings = message("check/warnings", count=len(report.problems) - report.errors)
    return say(message("check/summary", count=report.records, errors=errors, warnings=warnings))


def _earlier(report: Report) -> list[str]:
    """The way out of an earlier format; that is no problem."""
    return [say(message("check/earlier", count=len(report.earlier)))] if report.earlier else []


def as_json(report: Report) -> str:
    """`{"records": n, "problems": [{file, line, column, level, rule, message, hint}], "earlier_format": [file]}`."""
    problems = [data(problem) for problem in report.problems]
    earlier = [path.as_posix() for path in report.earlier]
    told = {"records": report.records, "problems": problems, "earlier_format": earlier}
    written = json.dumps(told, ensure_ascii=False, indent=2)
    return "".join(char if char.isprintable() or char == "\n" else json.dumps(char)[1:-1] for char in written) + "\n"


def data(problem: Problem) -> dict[str, object]:
    """One problem as data."""
    return {
        "file": problem.file.as_posix(),
        **asdict(problem.position),
        "level": str(problem.level),
        "rule": problem.rule,
        "message": problem.message,
        "hint": problem.hint,
    }


def github(report: Report) -> str:
    """Workflow commands that put each problem beside its line in a pull request."""
    annotations = "".join(_annotation(problem) for problem in report.problems)
    return annotations + "".join(f"{line}\n" for line in (_summary(report), *_earlier(report)))


def _annotation(problem: Problem) -> str:
    place = f"file={_property(problem.file.as_posix())},line={problem.position.line},col={problem.position.column}"
    body, hint = problem.message, problem.hint
    if hint:
        body = say(message("check/with-way-out", message=body, way_out=hint))
    return f"::{problem.level} {place},title={_property(problem.rule)}::{_data(body)}\n"


def _data(value: str) -> str:
    return printable(value.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A"))


def _property(value: str) -> str:
    return _data(value).replace(":", "%3A").replace(",", "%2C")


FORMATS: dict[str, Callable[[Report], str]] = {"text": text, "json": as_json, "github": github}
