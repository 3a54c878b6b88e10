"""Prints a report: as text for people, as JSON for programs, as annotations for a pull request."""

import json
from collections.abc import Callable
from dataclasses import asdict

from undertrim.check.runner import Report
from undertrim.record.problem import Problem, printable


def text(report: Report) -> str:
    """One line per problem with its hint below, and a closing count."""
    lines = [line for problem in report.problems for line in _text_lines(problem)]
    return "\n".join([*lines, _summary(report)]) + "\n"


def _text_lines(problem: Problem) -> list[str]:
    place = f"{printable(str(problem.file))}:{problem.position.line}:{problem.position.column}"
    lines = [f"{place}: {problem.level}: {problem.message} ({problem.rule})"]
    return [*lines, f"    {problem.hint}"] if problem.hint else lines


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
