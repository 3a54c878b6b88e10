"""What is wrong with a record, in a made-up language: nothing of it is left in English but what was typed, or is to be typed."""

import json
import re
from collections.abc import Iterator
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any

import marked
import pytest
from rule_pages import BASE

from undertrim.check import allowing, reports, runner
from undertrim.check.runner import Report
from undertrim.record import drives, units
from undertrim.record.drive_sizes import families
from undertrim.record.examples import typed
from undertrim.record.source import read_bytes, read_text
from undertrim.record.store import entry
from undertrim.record.unit_table import kinds
from undertrim.resources import top
from undertrim.words import SaidError, message, say, speaking
from undertrim.words.error import SaidError as Base

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
WORD = re.compile("[A-Za-z]{2,}")
VALUES = (
    "~", "yes", "[a, b", "{x: 1", "'abc", '"a\\qb"', "62 mm", "6,5 mm", "torx 30", "7 mm", "&a b", "*a", "!t x", "%x", "@x", "? x", "- a", "a: b: c",
    "12 parsecs", "-3 mm", "1/0 in", "9/8 in", "½ in", "1e5 mm", "2-3 mm", "x " * 100, "2014-13", "2014-02-31", "[]", "{}", "|", "'' x", "abc # 2 def",
    "\u200bz", "\u00a0x", "{a: ? b}", "99999", "-5", "allen 5", "M6", "T31", "hex 7.32 mm", "true", "Öld Id", "[a, a]", "\"\\u200b\"", "0", "1 s",
)  # fmt: skip


def blocks(node: Any) -> Iterator[dict[str, Any]]:
    if isinstance(node, dict):
        yield node
    for inner in node.values() if isinstance(node, dict) else node if isinstance(node, list) else ():
        yield from blocks(inner)


SCHEMAS = [
    block
    for path in top("schema").rglob("*.schema.json")
    if path.name != "published.schema.json"
    for block in blocks(json.loads(path.read_text("utf-8")))
]
EXAMPLES = sorted({typed(example) for block in SCHEMAS for example in block.get("examples", ())}, key=len, reverse=True)
_EXAMPLE = re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, EXAMPLES))})(?!\w)")
SIGNS = ("UTF", "YAML", "HEAD", "ZERO WIDTH SPACE", "NO-BREAK SPACE", "MM", "IN")
"""Signs have their names from Unicode."""


@cache
def allowed() -> frozenset[str]:
    """What is typed as it stands: fields, the words that they offer, units, drives."""
    found = [
        word
        for block in SCHEMAS
        for word in (*block.get("properties", ()), *block.get("kinds", ()), *map(str, block.get("enum", ())))
    ]
    found += [word for kind in kinds().values() for unit in kind.units.values() for word in (unit.name, unit.symbol)]
    found += [kind.example for kind in kinds().values()]
    found += [family.example for family in families().values()]
    return frozenset(word.lower() for text in (*found, *SIGNS) for word in WORD.findall(text))


def left_in_english(text: str, given: str) -> set[str]:
    """The words of a text that stand there in English, and in nothing that was given."""
    text = _EXAMPLE.sub("", text)
    words = {word.lower() for word in WORD.findall(given)} | allowed()
    return {word for word in WORD.findall(text) if word.lower() not in words}


@pytest.mark.parametrize("value", VALUES)
def test_every_complaint_is_in_the_readers_language(value: str) -> None:
    lines = BASE.splitlines()
    for place, line in enumerate(lines):
        before, colon, _ = line.partition(": ")
        if colon:
            text = "\n".join([*lines[:place], f"{before}: {value}", *lines[place + 1 :]])
            with speaking(marked.language()):
                told = [f"{p.message} {p.hint}" for p in entry(PATH, "vehicle", read_text(text, PATH)).problems]
            assert left_in_english(" ".join(told), text) == set()


@pytest.mark.parametrize("raw", [b"\xff\xfea", b"a: \xff", b"a" * 1_000_001, b"- a", b"abc", b"a: 1\n---\nb: 1", b"x: " + b"[" * 30, b"<<: a", b"<<<<<<< HEAD\n", b"", b"a: 1\na: 2", b"a: # 2 b", b"nosuch: 1"])  # fmt: skip
def test_what_cannot_be_read_is_told_so_too(raw: bytes) -> None:
    with speaking(marked.language()):
        told = [f"{p.message} {p.hint}" for p in entry(PATH, "vehicle", read_bytes(raw, PATH)).problems]
    assert told
    assert left_in_english(" ".join(told), raw[:100].decode("latin-1") + "HEAD") == set()


@pytest.mark.parametrize("kind", kinds())
def test_what_is_no_quantity_is_told_so_too(kind: str) -> None:
    for text in (
        "5",
        "0.8",
        "1",
        "9/8 in",
        "1/0",
        "-3 mm",
        "1,5 V",
        "1,500 A",
        "1e3",
        "2-3",
        "½",
        "",
        "x " * 25,
        ".5 q",
        "1 1/2 V",
        "5.5 mm",
    ):
        with suppress(units.UnitError):
            units.parse(text, kind)
            continue
        with pytest.raises(units.UnitError) as refused:
            units.parse(text, kind)
        with speaking(marked.language()):
            assert left_in_english(f"{refused.value.message} {refused.value.hint}", text) == set()


@pytest.mark.parametrize(
    "text",
    [
        "torx 30",
        "hex 7,5",
        "7 mm",
        "hex 7.32 mm",
        "hex 30 cm",
        "hex 7 mn",
        "hex 7",
        "T31",
        "M6",
        "hex 9/8 in",
        "xyz",
        "x " * 30,
        "star 7 odd",
    ],
)
def test_what_is_no_drive_is_told_so_too(text: str) -> None:
    with speaking(marked.language()), pytest.raises(drives.DriveError) as refused:
        drives.parse(text)
    with speaking(marked.language()):
        assert left_in_english(f"{refused.value.message} {refused.value.hint}", text) == set()


@pytest.mark.parametrize("form", reports.FORMATS)
def test_a_report_is_told_so_too(form: str) -> None:
    text = BASE.replace("{screw: T20, count: 4}", "{screw: T20}").replace("format: 1", "format: 1 # allow side-word")
    found = runner.check_entry(entry(PATH, "vehicle", read_text(text, PATH)))
    assert {problem.rule for problem in found} >= {allowing.RULE, "fastener-without-count"}
    with speaking(marked.language()):
        said = reports.FORMATS[form](Report(1, (*found, *found)))
    said = re.sub(
        r"\(check with .*?\)|\"\w+\":|::\w+ \S*::|\bfile|\bline|\bcol|\btitle|\"(?:error|warning)\"", "", said
    )
    assert left_in_english(said, f"{text} {PATH} {' '.join(problem.rule for problem in found)}") == set()


def test_an_exception_is_said_where_it_is_printed() -> None:
    assert SaidError is Base
    error = SaidError(message("yaml/tab"))
    assert (str(error), error.hint) == ("a tab stands in the indent", "indent with spaces")
    with speaking(marked.language()):
        assert WORD.findall(f"{error} {error.hint}") == []
        assert say(error.said) == str(error)
