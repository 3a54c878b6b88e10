"""The finder of the pages finds what the program finds: the shipped vehicles and made-up ones, by random words and by hand-picked ones."""

import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from in_node import Run
from undertrim import resources
from undertrim.derive.finding import telling, times
from undertrim.derive.finding.matching import query, search
from undertrim.derive.finding.rows import FinderJob, Row
from undertrim.publish.encoding import said
from undertrim.publish.facts import finding
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

ROOT = Path(__file__).parents[2]
LATEST = 2027
JOBS = [FinderJob("dash", "Radio", "receiver"), FinderJob("door@left", "Door, left", "speaker")]
FOUND = """({ rows, table, texts }) => {
  finder_match.add(rows);
  return texts.map((text) => {
    const asked = finder_query.query(text, table);
    const hits = finder_match.search(asked, table, 2027).map((hit) => [hit.row[0], hit.score, hit.jobs, hit.car]);
    const tokens = asked.tokens.map((token) => [token.text, token.times.map((time) => [time.start, time.end, time.months, time.words]), token.meanings]);
    return [tokens, asked.number, asked.misread, hits];
  });
}"""


def made_up() -> Iterator[Row]:
    """Names that are written in several ways, of other letters, and alike; several bodies and sides; numbers without jobs."""
    yield Row("alder/c-8-2010-2015", "Alder", "C-8", 2010, 2015, "", [], "2010-01", "2015-12", ["saloon", "estate"], ["left", "right"], "", JOBS, [("00ALD", {}, ""), ("00ALD.S", {"body": ["saloon"]}, "Saloon")])  # fmt: skip
    yield Row("alder/400-gt-2001-2006", "Alder", "400 GT", 2001, 2006, "", [], "2001-05", "2006-02", ["coupe"], ["right"], "", JOBS[:1], [("1M8", {}, "")])  # fmt: skip
    yield Row("birk/t-5-1995-2001-facelift", "Birk", "T 5", 1995, 2001, "facelift", ["Tee"], "1995-01", "2001-06", ["van"], ["left"], "", [], [])  # fmt: skip
    yield Row("öland/sång-2014-2018", "Öland", "Sång", 2014, 2018, "", ["Śong"], "2014-01", "2018-06", [], ["left"], "", JOBS, [("00XLD", {"body": ["a", "b"]}, "A or b")])  # fmt: skip


SAID = """({ rows, table, texts }) => {
  finder_match.add(rows);
  return texts.map((text) => {
    const asked = finder_query.query(text, table), hits = finder_match.search(asked, table, 2027), { words, answers } = finder_said.counted(hits, 1000);
    return [hits.length ? words : finder_said.whyNone(asked, table, 2027, false), finder_said.ofNumber(asked, hits, table, 2027), Object.fromEntries([...answers].map(([row, said]) => [row[0], said]))];
  });
}"""


@pytest.fixture(scope="module")
def rows() -> list[Row]:
    place = Workspace(ROOT)
    entries = [place.load(path) for path in place.files([place.records / "vehicles"])]
    shipped = [finding.row(entry.record, entry.address) for entry in entries if isinstance(entry.record, VehicleRecord)]
    return [*shipped, *made_up()]


def told(rows: list[Row], text: str) -> Any:
    words = finding.vocabulary()
    asked = query(text, words)
    hits = [[hit.row.address, hit.score, list(hit.jobs), hit.car] for hit in search(asked, rows, words, LATEST)]
    tokens = [[token.text, [_span(span) for span in token.times], [list(one) for one in token.meanings]] for token in asked.tokens]  # fmt: skip
    return [tokens, asked.number, asked.misread, hits]


def _span(span: times.Span) -> list[Any]:
    return [span.start, span.end, span.months, say(span.words)]


PICKED = [
    "finch 16 radio", "sedge march 2016", "sedge mar 2016 to may 2017", "2016 march, sedge", "drover crew", "gant saloon rhd", "finch rear speakers left",
    "van 2016", "finhc", "drover 2015-2017", "sedge 05 / 2016", "c8", "c 8", "400gt", "t5 98", "facelift", "oland sang", "c-8 wagon left-hand drive radio",
    "00KFN1M20GX000001", "finch 00kfn1m20gx000001", "1M8GDM9AXKP042788", "IM8GDM9AXKP042788", "00ALD1S20GX000001", "alder march", "the finch of 2016", "sedge 16-07..17-01", "'16 finch", "finch 2016-13", "",
]  # fmt: skip


def random_texts(rows: list[Row]) -> Iterator[str]:
    chance = random.Random(14)  # noqa: S311 - repeatable picks of words
    words = [name for row in rows for name in row.names] + [job.name for row in rows for job in row.jobs]
    words += ["2016", "16", "05/2016", "2014-2018", "mar 2017", "to", "-", "rhd", "left-hand drive", "estate", "pick up", "head unit", "amp", "x", "00HSD1020GX000001", "1J9RP1A36A1644345"]  # fmt: skip
    for _ in range(500):
        picked = [_spoilt(chance, chance.choice(words)) for _ in range(chance.randint(1, 3))]
        yield " ".join(picked)


def _spoilt(chance: random.Random, word: str) -> str:
    at = chance.randrange(len(word))
    other = chance.choice("abekmnorst 016")
    ways = [word, word, word[: at + 1], word[:at] + word[at + 1 :], word[:at] + other + word[at + 1 :], word[:at] + word[at : at + 2][::-1] + word[at + 2 :], word.upper()]  # fmt: skip
    return chance.choice(ways)


def test_both_find_the_same(run: Run, rows: list[Row]) -> None:
    texts = [*PICKED, *random_texts(rows)]
    asked = {"rows": said(list(map(list, rows))), "table": resources.table("vin"), "texts": texts}
    answers = run(FOUND, asked, "finder-match", "finder-query")
    for text, answer in zip(texts, answers, strict=True):
        assert answer == told(rows, text), text
    assert sum(bool(hits) for *_, hits in answers) > len(texts) / 3


def sentences(rows: list[Row], text: str) -> Any:
    words = finding.vocabulary()
    asked = query(text, words)
    hits = search(asked, rows, words, LATEST)
    first, answers = telling.counted(hits)
    none = telling.why_none(asked, rows, words, LATEST)
    numbers = list(map(say, telling.of_number(asked, hits, LATEST)))
    return [say(first) if hits else say(none or ""), numbers, {name: say(one) for name, one in answers.items()}]


def test_both_say_the_same_of_it(run: Run, rows: list[Row]) -> None:
    texts = [text for text in (*PICKED, "finch 2022", "sedge 2030", "2030", "finch 2018-09", "2016-13 sedge", *random_texts(rows)) if text.strip()]  # fmt: skip
    asked = {"rows": said(list(map(list, rows))), "table": resources.table("vin"), "texts": texts}
    answers = run(SAID, asked, "finder-match", "finder-query", "finder-said")
    for text, answer in zip(texts, answers, strict=True):
        assert answer == sentences(rows, text), text
    assert len({answer[0] for answer in answers}) > 12


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("finch 16 radio", [("kelbrook/finch-2014-2018", ["dash"], {})]),
        ("sedge march 2016", [("harrowby/sedge-2011-2016", [], {})]),
        ("sedge july 2016", [("harrowby/sedge-2016-2021", [], {})]),
        ("gant rhd", [("tolverne/gant-1998-2003", [], {"drive-side": "right"})]),
        ("c-8 wagon lhd radio", [("alder/c-8-2010-2015", ["dash"], {"body": "estate", "drive-side": "left"})]),
        ("finch rear speakers", [("kelbrook/finch-2014-2018", ["rear-door@left", "rear-door@right"], {})]),
        ("finch front left", [("kelbrook/finch-2014-2018", ["front-door@left"], {})]),
        ("finch radio front speakers left", [("kelbrook/finch-2014-2018", ["dash", "front-door@left"], {})]),
        ("finch radoi", [("kelbrook/finch-2014-2018", ["dash"], {})]),
        ("fimch", [("kelbrook/finch-2014-2018", [], {})]),
        ("00KFN1M20GX000001", [("kelbrook/finch-2014-2018", [], {"radio": "map"})]),
        ("birk radio", []),
        ("nothing", []),
    ],
)
def test_finds(rows: list[Row], text: str, expected: list[Any]) -> None:
    words = finding.vocabulary()
    hits = search(query(text, words), rows, words, LATEST)
    assert [(hit.row.address, list(hit.jobs), hit.car) for hit in hits] == expected
