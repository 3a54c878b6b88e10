"""In a made-up language nothing is left in English: no page, no sheet and no answer of a command.

The records' own words are in Greek letters and the program's in Cyrillic ones, so that what is seen in Latin letters was said by nobody.
"""

import html.parser
import json
import re
import sys
from collections.abc import Collection, Iterator, Sequence
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import answers
import marked
import pytest

from pdf_text import texts
from undertrim import cli
from undertrim.commands import COMMANDS
from undertrim.derive.fit.stock import Stock, Stocked
from undertrim.publish.encoding import Published
from undertrim.publish.facts.with_stock import with_stock
from undertrim.publish.printed import pdf
from undertrim.publish.web import calculators, pages
from undertrim.record.gear import GearRecord
from undertrim.resources import table
from undertrim.words import language as languages
from undertrim.words import speaking
from vehicle_pages import all_pages

LANGUAGES = sys.modules["undertrim.words.language"]
"""The module; the package has a function of this name."""
VEHICLES = sorted(path for path, entry in marked.records().items() if entry.kind == "vehicle")
ATTRIBUTES = ("aria-label", "aria-description", "title", "alt", "placeholder", "data-label", "label")
"""What of an element is read out or shown; `data-label` stands before a cell on a narrow screen."""
CODES = frozenset(
    [
        "mark",
        "marks",
        "weight",
        "section",
        "signal",
        "by",
        "kept_by",
        "fate",
        "word",
        "how",
        "high_voltage",
        "kind",
        "picture",
        "code",
        "state",
        "id",
    ]
)
"""Keys of what a sheet is given on which it decides, and that it does not print; what it prints is looked at in the printed sheet."""
DAY = date(2026, 11, 25)


@pytest.fixture(autouse=True)
def _another_language() -> Iterator[None]:
    with speaking(marked.language()):
        yield


@cache
def told(path: Path) -> Published:
    return answers.told(marked.records()[path])


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_what_the_pages_of_a_vehicle_fetch_from_the_shelf(path: Path) -> None:
    given = with_stock(answers.known(marked.records()[path], _shelf()))
    assert left(list(_printed(given, ADDRESSES)), *marks(told(path))) == {}


ADDRESSES = CODES | {"openings", "opening", "leads", "pin", "d", "fill", "stroke", "clauses", "cars", "lang"}
"""Keys of what no reader sees."""


@cache
def _shelf() -> Stock:
    entries = marked.records().values()
    return Stock(
        tuple(Stocked(entry.id, entry.record.gear) for entry in entries if isinstance(entry.record, GearRecord))
    )


class _Seen(html.parser.HTMLParser):
    """Each piece of text of a page, and each attribute that people are told."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self._unseen = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._unseen = tag in ("script", "style")
        self.found += [value for name, value in attrs if name in ATTRIBUTES and value]

    def handle_endtag(self, tag: str) -> None:
        self._unseen = False

    def handle_data(self, data: str) -> None:
        if not self._unseen:
            self.found.append(data)


def left(texts: Sequence[str], *also: str) -> dict[str, str]:
    """What is left in English, each with the text it stands in; `also` are words that may be there."""
    return {word: text for text in texts for word in marked.unmarked(text) if word not in also}


def seen(page: str) -> list[str]:
    reader = _Seen()
    reader.feed(page)
    assert len(reader.found) > 5
    return reader.found


def marks(made: Published) -> set[str]:
    """The capital letters by which the jobs of a page are told apart."""
    return {target["mark"] for target in made["targets"]}


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_page_of_a_vehicle(path: Path) -> None:
    made = told(path)
    assert left(seen(all_pages(made)), *marks(made)) == {}


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_what_the_sheets_of_a_vehicle_are_given(path: Path) -> None:
    made = told(path)
    given = [text for sheet in json.loads(answers.sheets(made)) for text in _printed(sheet)]
    assert left(given, *marks(made)) == {}


def _printed(data: Any, unseen: Collection[str] = CODES) -> Iterator[str]:
    if isinstance(data, dict):
        for key, value in data.items():
            if key not in unseen:
                yield from _printed(value, unseen)
    elif isinstance(data, list):
        for value in data:
            yield from _printed(value, unseen)
    elif isinstance(data, str):
        yield " ".join(lettering(data)) if data.startswith("<svg") else data


def lettering(svg: str) -> list[str]:
    """What is written in a picture; the title of a small one is not: paper does not read it out, and a drawing has its own beside it."""
    return re.findall(r"<text[^>]*>([^<]*)<", svg)


def test_a_printed_sheet() -> None:
    path = next(path for path in VEHICLES if path.stem == "finch-2014-2018")
    made = told(path)
    url = "https://undertrim.invalid/x.html"
    printed = pdf.render(made, {"fitting": url, "wiring": url}, "a4", DAY)
    assert left([re.sub(r"https?://\S+|(?<=-)\s", "", page) for page in texts(printed)], *marks(made)) == {}


def test_the_pages_that_lead_to_vehicles() -> None:
    every: list[Published] = [told(path) for path in VEHICLES]
    assert left(seen(pages.make("Κελβροοκ", every))) == {}
    makes: list[Published] = [{"id": "kelbrook", "name": "Κελβροοκ", "count": 2}]
    assert left(seen(pages.home(makes, demo=True))) == {}
    assert left(seen(calculators.page())) == {}


@pytest.fixture(scope="module")
def collection(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The records in Greek letters, as files."""
    folder = tmp_path_factory.mktemp("greek")
    marked.workspace(folder)
    return folder


@pytest.fixture
def spoken_by_commands(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The made-up language as one of ours."""
    file = tmp_path / "qq/LC_MESSAGES/undertrim.po"
    file.parent.mkdir(parents=True)
    file.touch()
    monkeypatch.setattr(LANGUAGES, "_locale", lambda: tmp_path)
    monkeypatch.setattr(LANGUAGES, "read", lambda _tag, _path: marked.language())
    languages.cache_clear()


CAR, OTHER = "kelbrook/finch-2014-2018", marked.SELDOM_ADDRESS
ANSWERS = [
    f"plan {CAR} --job dash",
    f"plan {CAR} --job front-door",
    f"fit {CAR}",
    f"fit {CAR} front-door skerrowe-pier-65",
    f"shop {CAR} --job dash",
    f"wiring {CAR}",
    f"wiring {CAR} skerrowe-lead-16",
    f"meter {CAR} radio-main/1 --reading 12.2V,key~on",
    f"meter {CAR} --ladder wheel --reading 330ohm",
    "coverage",
    f"coverage {CAR}",
    f"mirror {CAR} --drive-side right",
    "check",
    *(f"{verb} {OTHER}" for verb in ("coverage", "fit", "wiring", "mirror --drive-side left")),
    f"plan {CAR} --job boot",
    f"fit {CAR} front-door nosuch",
    "meter nosuch radio-main/1",
    f"verify {OTHER} --by rk --car 2016",
    "cable --current 30 --length 4m",
    "load 4 4 --wired parallel",
    "reckon gain 60~W 4~ohm",
]
_TYPED = re.compile(r"(?<!\w)--?[a-z][a-z-]*|\{[^}]*\}|'[^' ]*'|\([a-z-]+\)$|\S+\.yaml\S*")
"""What is typed as it stands in every language: options, choices, what was asked for, the name of a rule, a file."""


READ = {word for state in table("functions")["state"].values() for said in state["says"] for word in said.split()}
"""Words for the state of the car, which a reading names: they are typed, and offered, as they are read."""


@pytest.mark.usefixtures("spoken_by_commands")
@pytest.mark.parametrize("line", ANSWERS)
def test_the_answer_of_a_command(line: str, collection: Path, capsys: pytest.CaptureFixture[str]) -> None:
    inside = [] if line.split()[0] in ("cable", "load", "reckon") else ["--in", str(collection)]
    verb, *words = (word.replace("~", " ") for word in line.split())
    cli.main([verb, *inside, "--language", "qq", *words])
    said = [_TYPED.sub("", part.replace(str(collection), "")) for part in (*capsys.readouterr(),)]
    assert re.search("[а-я]{3}", "".join(said))
    assert left("\n".join(said).splitlines(), *READ) == {}


@pytest.mark.usefixtures("spoken_by_commands")
@pytest.mark.parametrize("verb", ["", *COMMANDS])
def test_the_help_of_a_command(verb: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        cli.main([*verb.split(), "--help", "--language", "qq"])
    shown = capsys.readouterr().out
    inner = re.findall(r"^    ([a-z]+)(?: |$)", shown, re.MULTILINE)
    verbs = re.compile(rf"\b(?:{'|'.join([*COMMANDS, *inner])})\b")
    assert left([verbs.sub("", _TYPED.sub("", line)) for line in shown.splitlines()]) == {}
