"""Reports are lines for people, one object for programs, annotations for a pull request; nothing steers a terminal."""

import json
from dataclasses import replace
from pathlib import Path

from undertrim.check import reports
from undertrim.check.runner import Report
from undertrim.record.problem import Level, Position, Problem
from undertrim.words import Message
from undertrim.words import message as message_of


def fault(said: str, hint: str = "") -> Message:
    return message_of("schema/fault", said=said, hint=hint)


def problem(message: str = "'x' is wrong", hint: str = "mend it", file: str = "a/b.yaml") -> Problem:
    return Problem(Path(file), Position(3, 7), Level.ERROR, "some-rule", fault(message, hint))


WARNING = Problem(Path("a/b.yaml"), Position(9, 1), Level.WARNING, "other-rule", fault("'y' is odd"))
STEERING = "\x1b[31m\x07\r\n\x9b2J\u202e\u2028\x00"


def test_text() -> None:
    assert reports.text(Report(2, (problem(), WARNING))) == (
        "a/b.yaml:3:7: error: 'x' is wrong (some-rule)\n"
        "    mend it\n"
        "a/b.yaml:9:1: warning: 'y' is odd (other-rule)\n"
        "2 records checked: 1 error, 1 warning\n"
    )
    assert reports.text(Report(1, ())) == "1 record checked, no problems\n"
    assert reports.text(Report(0, ())) == "0 records checked, no problems\n"
    assert reports.text(Report(2, (), (Path("a/b.yaml"),) * 2)) == (
        "2 records checked, no problems\n2 records are of format 1: 'undertrim upgrade' moves them to format 2\n"
    )
    assert reports.text(Report(1, (WARNING, WARNING))).endswith("1 record checked: 0 errors, 2 warnings\n")


def test_a_message_that_repeats_is_said_once_with_its_count_and_first_places() -> None:
    many = tuple(problem(file=f"a/{number}.yaml") for number in range(200))
    assert reports.text(Report(200, (*many, WARNING))) == (
        "a/0.yaml:3:7: error: 'x' is wrong (some-rule)\n"
        "    mend it\n"
        "    200 times, also at a/1.yaml:3:7, a/2.yaml:3:7, a/3.yaml:3:7 and 196 more "
        "(check with --format json for all)\n"
        "a/b.yaml:9:1: warning: 'y' is odd (other-rule)\n"
        "200 records checked: 200 errors, 1 warning\n"
    )
    assert "    3 times, also at a/1.yaml:3:7, a/2.yaml:3:7\n" in reports.text(Report(3, many[:3]))
    assert len(json.loads(reports.as_json(Report(200, many)))["problems"]) == 200
    assert reports.github(Report(200, many)).count("::error ") == 200


def test_what_differs_in_anything_that_is_said_is_said_apart() -> None:
    apart = (problem(), problem(hint="mend this"), problem("'y' is wrong"), replace(problem(), level=Level.WARNING))
    assert reports.text(Report(1, apart)).count("a/b.yaml:3:7: ") == 4


def test_json_is_exactly_this() -> None:
    assert json.loads(reports.as_json(Report(2, (problem(), WARNING), (Path("a/b.yaml"),)))) == {
        "records": 2,
        "problems": [
            {
                "file": "a/b.yaml",
                "line": 3,
                "column": 7,
                "level": "error",
                "rule": "some-rule",
                "message": "'x' is wrong",
                "hint": "mend it",
            },
            {
                "file": "a/b.yaml",
                "line": 9,
                "column": 1,
                "level": "warning",
                "rule": "other-rule",
                "message": "'y' is odd",
                "hint": "",
            },
        ],
        "earlier_format": ["a/b.yaml"],
    }
    assert json.loads(reports.as_json(Report(0, ()))) == {"records": 0, "problems": [], "earlier_format": []}


def test_json_keeps_letters_and_every_file_name() -> None:
    name = "é/\x1b\udcff\u202e\U000e0001 中.yaml"
    written = reports.as_json(Report(1, (problem("'ü' is wrong", file=name),)))
    assert "'ü' is wrong" in written
    assert json.loads(written)["problems"][0]["file"] == name
    assert all(char.isprintable() or char == "\n" for char in written)
    written.encode()


def test_github_escapes_what_would_end_a_command() -> None:
    found = problem("100% of 'a: b, c'", "see: x, y", "a:b,c%d\ne.yaml")
    assert reports.github(Report(1, (found,))) == (
        "::error file=a%3Ab%2Cc%25d%0Ae.yaml,line=3,col=7,title=some-rule::100%25 of 'a: b, c'. see: x, y\n"
        "1 record checked: 1 error, 0 warnings\n"
    )
    assert reports.github(Report(1, (WARNING,))).startswith(
        "::warning file=a/b.yaml,line=9,col=1,title=other-rule::'y' is odd\n"
    )


def test_nothing_from_a_record_steers_the_terminal() -> None:
    report = Report(1, (problem(f"'{STEERING}' is wrong", f"write '{STEERING}'", f"a{STEERING}b.yaml"),))
    for name, printed in reports.FORMATS.items():
        shown = printed(report)
        assert all(char.isprintable() or char == "\n" for char in shown), name
        shown.encode()
    assert reports.text(report).splitlines() == [
        "a?[31m????2J???b.yaml:3:7: error: '?[31m????2J???' is wrong (some-rule)",
        "    write '?[31m????2J???'",
        "1 record checked: 1 error, 0 warnings",
    ]
