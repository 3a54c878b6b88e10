"""An allow hides one rule's problems in one line, gives a reason, and expires."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.check import runner
from undertrim.check.allowing import FIXED, allows
from undertrim.record.source import read_bytes, read_text
from undertrim.record.store import entry

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
HELD = "    held_by: [{screw: T20, count: 4}]"
GUILTY = "    held_by: [{screw: T20}]"
LINE = 24


def said(text: str, newline: str = "\n") -> list[str]:
    source = read_bytes(text.replace("\n", newline).encode(), PATH)
    problems = runner.check_entry(entry(PATH, "vehicle", source))
    return [f"{p.position.line}:{p.position.column}: {p.message} ({p.hint}) [{p.rule}]" for p in problems]


def changed(line: str, above: str = "", old: str = HELD) -> str:
    assert old in BASE
    return BASE.replace(old, f"{above}{line}", 1)


NO_COUNT = "'screw: T20' has no count (count them, or write 'count: unknown') [fastener-without-count]"
ALLOW = "# allow fastener-without-count"


def test_the_problem_is_there_without_an_allow() -> None:
    assert said(BASE) == []
    assert said(changed(GUILTY)) == [f"{LINE}:15: {NO_COUNT}"]


@pytest.mark.parametrize("newline", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize(
    "text",
    [
        changed(f"{GUILTY} {ALLOW}: the car is gone"),
        changed(f"{GUILTY}   #  allow   fastener-without-count  :  the car is gone"),
        changed(f"{GUILTY} # Allow fastener-without-count: the car is gone"),
        changed(GUILTY, above=f"    {ALLOW}: the car is gone\n"),
        changed(GUILTY, above=f"{ALLOW}: the car is gone\n\n    # another word\n"),
    ],
)
def test_an_allow_hides_its_line(text: str, newline: str) -> None:
    assert said(text, newline) == []


def test_an_allow_speaks_of_one_line_and_one_rule() -> None:
    two = f"{GUILTY} {ALLOW}: the car is gone\n    takes: 9 h\n    replaced: yes"
    [message] = said(
        changed(
            two,
            old=f"{HELD}\n    tethers:\n      main: {{name: Main plug, kind: plug}}\n    replaced: yes\n    takes: 3 min",
        )
    )
    assert message.endswith("[implausible-quantity]")
    elsewhere = changed(GUILTY, above=f"    {ALLOW}: the car is gone\n    direction: up\n")
    assert said(elsewhere) == [
        f"{LINE}:5: this allow of 'fastener-without-count' hides nothing (remove it) [allow]",
        f"{LINE + 2}:15: {NO_COUNT}",
    ]


@pytest.mark.parametrize("tail", ["", ":", ": ", " :"])
def test_an_allow_gives_a_reason(tail: str) -> None:
    assert said(changed(f"{GUILTY} {ALLOW}{tail}")) == [
        f"{LINE}:15: {NO_COUNT}",
        f"{LINE}:29: this allow of 'fastener-without-count' gives no reason "
        "(write '# allow fastener-without-count: why') [allow]",
    ]


def test_an_allow_names_a_rule() -> None:
    assert said(changed(f"{HELD} # allow fastener-count: because")) == [
        f"{LINE}:39: 'fastener-count' is not a rule (take the name from the end of the message it is meant for) [allow]"
    ]


@pytest.mark.parametrize("rule", FIXED)
def test_what_may_not_be_allowed(rule: str) -> None:
    assert said(changed(f"{HELD} # allow {rule}: because")) == [
        f"{LINE}:39: '{rule}' problems cannot be allowed (mend what it says) [allow]"
    ]


def test_an_allow_does_not_hide_what_the_schema_says() -> None:
    assert said(changed(f"{HELD.replace('T20', 'hexx 7 mm')} # allow schema: because")) == [
        f"{LINE}:23: 'hexx 7 mm' cannot be read as a drive (write 'hex 7 mm') [schema]",
        f"{LINE}:45: 'schema' problems cannot be allowed (mend what it says) [allow]",
    ]


def test_an_allow_expires() -> None:
    assert said(changed(f"{HELD} {ALLOW}: the car is gone")) == [
        f"{LINE}:39: this allow of 'fastener-without-count' hides nothing (remove it) [allow]"
    ]


@pytest.mark.parametrize("rest", [" of ten minutes", " access, it is tight", "-me: x", "ance: 2 mm"])
def test_a_comment_in_plain_words_is_no_allow(rest: str) -> None:
    assert said(changed(f"{HELD} # allow{rest}")) == []


@pytest.mark.parametrize(
    "how",
    [
        f'"Text {ALLOW}: x"',
        f"'Text {ALLOW}: x'",
        f'"Text\n      {ALLOW}: x\n      more"',
        f"|\n      Text\n      {ALLOW}: x\n      {ALLOW}: x",
        f">\n      Text\n      {ALLOW}: x",
    ],
)
def test_what_stands_in_a_text_is_text(how: str) -> None:
    assert said(changed(f"{HELD}\n    how: {how}")) == []


def test_a_comment_right_behind_a_text_is_an_allow() -> None:
    hidden = f"    how: |\n      Text\n    {ALLOW}: the car is gone\n{GUILTY}"
    assert said(changed(hidden)) == []
    behind = f'    how: "# text" {ALLOW}: late\n{HELD}'
    assert said(changed(behind)) == [
        f"{LINE}:19: this allow of 'fastener-without-count' hides nothing (remove it) [allow]"
    ]


def test_an_allow_is_not_blamed_for_what_was_not_looked_at() -> None:
    broken = changed(f"{HELD} {ALLOW}: the car is gone").replace("takes: 3 min", "taks: 3 min")
    assert [line.split("[")[1] for line in said(broken)] == ["schema]"]
    unread = changed(f"{HELD} {ALLOW}: the car is gone") + "nobody knows this\n"
    assert [line.split("[")[1] for line in said(unread)] == ["yaml]"]
    collection = BASE.replace("  built:", "  # allow overlapping-records: two plants\n  built:")
    assert said(collection) == []


def test_positions_of_allows() -> None:
    found = allows(read_text("a: 1 # allow x: y\n# allow z\n\nb: 2\n# allow last: w\n", PATH))
    assert [(a.position.line, a.position.column, a.line, a.rule, a.reason) for a in found] == [
        (1, 6, 1, "x", "y"),
        (2, 1, 4, "z", ""),
        (5, 1, 5, "last", "w"),
    ]
