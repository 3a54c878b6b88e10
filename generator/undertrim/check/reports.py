"""Prints a report: as text for people, where what repeats is said once; and all of it as JSON for programs, as annotations for a pull request."""

import json
from collections.abc import Callable, Sequence
from dataclasses import asdict

from undertrim.check.runner import Report
from undertrim.record.problem import Problem, printable

_FURTHER = 3
"""So many more places of a message that repeats are named, the rest counted."""


def text(report: Report) -> str:
    """One line per message with its hint and further places below, and a closing count; what repeats is said once."""
    alike: dict[tuple[str, ...], list[Problem]] = {}
    for problem in report.problems:
        alike.setdefault((problem.level, problem.rule, problem.message, problem.hint), []).append(problem)
    lines = [line for same in alike.values() for line in _text_lines(same)]
    return "\n".join([*lines, _summary(report)]) + "\n"


def _text_lines(same: Sequence[Problem]) -> list[str]:
    """The lines of one message, by all that say it."""
    first = same[0]
    lines = [f"{_place(first)}: {first.level}: {first.message} ({first.rule})"]
    if first.hint:
        lines.append(f"    {first.hint}")
    return [*lines, f"    {_further(same)}"] if len(same) > 1 else lines


def _further(same: Sequence[Problem]) -> str:
    named = [_place(problem) for problem in same[1 : _FURTHER + 1]]
    rest = len(same) - 1 - len(named)
    more = f" and {rest} more (check with --format json for all)" if rest else ""
    return f"{len(same)} times, also at {', '.join(named)}{more}"


def _place(problem: Problem) -> str:
    return f"{printable(str(problem.file))}:{problem.position.line}:{problem.position.column}"


def _summary(report: Report) -> str:
    records = f"{report.records} record{'' if report.records == 1 else 's'} checked"
    if not report.problems:
        return f"{records}, no problems"
    warnings = len(report.problems) - report.errors
    return f"{records}: {_count(report.errors, 'error')}, {_count(warnings, 'warning')}"


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}{'' if number == 1 else 's'}"


def as_json(report: Report) -> str:
    """`{"records": n, "problems": [{file, line, column, level, rule, message, hint}]}`."""
    problems = [
        {
            "file": problem.file.as_posix(),
            **asdict(problem.position),
            "level": str(problem.level),
            "rule": problem.rule,
            "message": problem.message,
            "hint": problem.hint,
        }
        for problem in report.problems
    ]
    written = json.dumps({"records": report.records, "problems": problems}, ensure_ascii=False, indent=2)
    return "".join(char if char.isprintable() or char == "\n" else json.dumps(char)[1:-1] for char in written) + "\n"


def github(report: Report) -> str:
    """Workflow commands that put each problem beside its line in a pull request."""
    return "".join(_annotation(problem) for problem in report.problems) + _summary(report) + "\n"


def _annotation(problem: Problem) -> str:
    place = f"file={_property(problem.file.as_posix())},line={problem.position.line},col={problem.position.column}"
    body = f"{problem.message}. {problem.hint}" if problem.hint else problem.message
    return f"::{problem.level} {place},title={_property(problem.rule)}::{_data(body)}\n"


def _data(value: str) -> str:
    return printable(value.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A"))


def _property(value: str) -> str:
    return _data(value).replace(":", "%3A").replace(",", "%2C")


FORMATS: dict[str, Callable[[Report], str]] = {"text": text, "json": as_json, "github": github}
