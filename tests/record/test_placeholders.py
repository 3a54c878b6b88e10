"""What only holds a place is answered with what to write at that field: none, unknown, what is so, or nothing."""

import pytest
from rule_pages import BASE

from said_at import PATH
from undertrim.record import complaints
from undertrim.record.source import read_text

BOTH = "write 'none' if somebody looked and there is none, 'unknown' if nobody has found out, or the value"
UNKNOWN = "write 'unknown' if nobody has found out, or the value"
NOTHING = "write the value; if nobody has found out, leave the field out"
REQUIRED = "write what is so: this must be said"
WORDS = "write what is so, or leave the field out"


def told(old: str, new: str) -> list[tuple[str, str]]:
    assert BASE.count(old) >= 1
    source = read_text(BASE.replace(old, new, 1), PATH)
    found = (complaints.as_problem(source, one) for one in complaints.complaints(source, "vehicle"))
    return [(problem.message, problem.hint) for problem in (*source.problems, *found)]


@pytest.mark.parametrize(
    ("old", "new", "hint"),
    [
        ("time: 2 min", "time: n/a", UNKNOWN),
        ("time: 2 min", "time: ?", UNKNOWN),
        ("{time: 2 min, why: Restraint reserve power, source: e1}", "'??'", NOTHING),
        ("after_battery:", "restraint: {wait: N.A.}\nafter_battery:", BOTH),
        ("    area: dash\n    release", "    area: dash\n    after: N.A.\n    release", NOTHING),
        ("high_voltage: no", "high_voltage: -", UNKNOWN),
        ("high_voltage: no", "high_voltage: unclear", UNKNOWN),
        ("count: 4", "count: TBC", UNKNOWN),
        ("release: slide", "release: --", REQUIRED),
        ("takes: 3 min", "takes: ...", NOTHING),
        ("    area: dash\n    release", "    area: N.A.\n    release", NOTHING),
        ("why: Restraint reserve power", "why: todo", REQUIRED),
        ("    replaced: yes", "    refit_how: TBD\n    replaced: yes", WORDS),
        ("model: Otter", "model: '?'", REQUIRED),
        ("behind: [radio]", "behind: [xxx]", REQUIRED),
    ],
)
def test_what_to_write_instead(old: str, new: str, hint: str) -> None:
    typed = next(mark for mark in ("N.A.", "TBD", new.split(": ")[-1].strip("'[]")) if mark in new)
    assert told(old, new) == [(f"'{typed}' says neither that there is none nor that nobody knows", hint)]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("model: Otter", "model: XX"),
        ("model: Otter", "model: X-1"),
        ("why: Restraint reserve power", "why: See the maker's n/a list"),
        ("how: Take", "how: Todo list in hand, take"),
    ],
)
def test_words_that_only_look_like_one_stay(old: str, new: str) -> None:
    assert told(old, new) == []
