"""What YAML would leave out of a text without a word is said, with the line as it must be typed."""

from pathlib import Path

import pytest

from undertrim.record.source import Source, read_text

PATH = Path("x.yaml")


def said(found: Source) -> list[str]:
    return [f"{p.position.line}:{p.position.column}: {p.message} ({p.hint})" for p in found.problems]


@pytest.mark.parametrize(
    ("line", "column", "cut", "whole"),
    [
        ("how: Use clip no. #2", 19, "'#2'", "'Use clip no. #2'"),
        ("how: #2 bit", 6, "'#2 bit'", "'#2 bit'"),
        ("how: Clip # 2", 11, "'# 2'", "'Clip # 2'"),
        ("how: Screw #10-32.  Then turn", 12, "'#10-32.  Then turn'", "'Screw #10-32.  Then turn'"),
        ("how: Use it.  #2 bit", 15, "'#2 bit'", "'Use it. #2 bit'"),
        ("how: Don't use #2", 16, "'#2'", '"Don\'t use #2"'),
        ("how: The white one # not the blue", 20, "'# not the blue'", "'The white one # not the blue'"),
        ("how: no #checked", 9, "'#checked'", "'no #checked'"),
        ("how: C #", 8, "'#'", "'C #'"),
    ],
)
def test_the_end_of_a_text_is_not_lost_behind_a_hash(line: str, column: int, cut: str, whole: str) -> None:
    found = read_text(f"{line}\nx: y\n", PATH)
    (only,) = said(found)
    assert only.startswith(f"1:{column}: {cut} would be left out of the text, as a comment (write {whole}, in quotes; ")
    assert read_text(f"how: {whole}\n", PATH).problems == ()
    assert found.data == {**read_text(f"how: {whole}\n", PATH).data, "x": "y"}


@pytest.mark.parametrize(
    "line",
    [
        "how: The white one  # not the blue",
        "how: The white one\t# not the blue",
        "how: no # checked at the car",
        "how: Lead on the left # allow side-word: marked so on the plug",
        "how: 'Clip no. #2' # measured",
        "how: C#2",
        "how: [a, b] # measured",
        "how:  # to come",
        "how:  ## to come",
        "how: |  # as it stands\n  Clip #2",
        "# how: Clip #2",
    ],
)
def test_a_comment_that_is_set_off_is_a_comment(line: str) -> None:
    assert said(read_text(f"{line}\n", PATH)) == []


def test_the_way_out_is_one_as_typed() -> None:
    (only,) = read_text("how: The white one # not the blue\n", PATH).problems
    for typed in only.hint.removeprefix("write ").split(", in quotes; if it is a comment, set it off: "):
        assert read_text(f"how: {typed}\n", PATH).problems == ()


def test_in_brackets_the_text_ends_where_the_brackets_do() -> None:
    assert said(read_text("a: {how: Use no. #2}\nb: c\n", PATH)) == [
        "1:18: '#2' would be left out of the text, as a comment "
        "(write 'Use no. #2', in quotes; if it is a comment, set it off: Use no.  # 2)"
    ]
    assert read_text("a: [b #c, d\n ,e]\n", PATH).data == {"a": ["b #c", "e"]}


def test_a_text_over_several_lines_is_looked_at_to_its_end() -> None:
    (only,) = said(read_text("how: Pull\n  off #2 clip\n  and on\n", PATH))
    assert only.startswith("2:7: '#2 clip' would be left out of the text")


@pytest.mark.parametrize(
    ("text", "column"), [("a: [?x, b]", 5), ("a: {?x: y}", 5), ("a: {b: c, ? 'x': y}", 11), ("? x\n: y", 1)]
)
def test_a_question_mark_is_not_eaten(text: str, column: int) -> None:
    assert said(read_text(f"{text}\n", PATH)) == [
        f"1:{column}: this '?' would be left out of what is read "
        "(if it belongs to the text, write '?x', in quotes; else remove it)"
    ]


@pytest.mark.parametrize(
    ("text", "column", "mended"),
    [("a: {tell: ?x}", 11, "a: {tell: '?x'}"), ("a: {ask: Which?, b: c}", 10, "a: {ask: 'Which?', b: c}")],
)
def test_a_question_mark_that_stops_the_reader_is_named(text: str, column: int, mended: str) -> None:
    assert said(read_text(f"{text}\n", PATH)) == [
        f"1:{column}: this '?' means something to YAML here (write: {mended})"
    ]


@pytest.mark.parametrize("text", ["a: ?x", "a: Which?", "- ?x", "a: {b: 'Which?'}", "a: '? x'"])
def test_a_question_mark_that_is_kept_passes(text: str) -> None:
    assert said(read_text(f"{text}\n", PATH)) == []


@pytest.mark.parametrize("newline", ["\n", "\r\n"])
def test_a_merge_that_was_not_finished_is_called_so(newline: str) -> None:
    lines = ["format: 1", "<<<<<<< HEAD", "a: b", "||||||| 1f2e3d", "a: a", "=======", "a: c", ">>>>>>> late", ""]
    found = read_text(newline.join(lines), PATH)
    hint = "keep what is right of both, and remove the lines with such marks"
    assert said(found) == [
        f"{number}:1: '{lines[number - 1]}' is a mark of git: two versions of this file were not merged ({hint})"
        for number in (2, 4, 6, 8)
    ]


@pytest.mark.parametrize("text", ["# =======", "a: =======", "a: |\n  <<<<<<< HEAD", "a: '<<<<<<< x'"])
def test_what_only_looks_like_such_a_mark_passes(text: str) -> None:
    assert said(read_text(f"{text}\n", PATH)) == []
