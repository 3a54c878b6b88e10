"""A page of the handbook may stand there in a further language, for the edition of the site in it, and says the same as the one of its name."""

import re
from pathlib import Path

import pytest

from pages import HANDBOOK, blocks, links, prose
from undertrim.record import handbook
from undertrim.words import tags

TRANSLATED = [path for tag in tags() for path in sorted((HANDBOOK / tag).glob("*.md"))]


@pytest.fixture
def book(tmp_path: Path) -> Path:
    start = tmp_path / "handbook"
    texts = {"a.md": "# A", "b.md": "# B", "plug.png": "-", "es/a.md": "# Á", "es/face.png": "-", "more/c.md": "# C"}
    for name, text in texts.items():
        (start / name).parent.mkdir(parents=True, exist_ok=True)
        (start / name).write_text(text, encoding="utf-8")
    return start


def copied(book: Path, tag: str) -> dict[str, str]:
    target = book.parent / "copied"
    handbook.copy(book, target, tag)
    files = [path for path in target.rglob("*") if path.is_file()]
    return {path.relative_to(target).as_posix(): path.read_text(encoding="utf-8") for path in files}


def test_a_page_in_the_language_of_the_edition_takes_the_place_of_the_other(book: Path) -> None:
    assert copied(book, "es") == {
        "a.md": "# Á",
        "b.md": "# B",
        "face.png": "-",
        "plug.png": "-",
        "more/c.md": "# C",
    }
    assert handbook.translated(book, "es") == {"a.md": "# A"}


def test_an_edition_in_another_language_has_none_of_them(book: Path) -> None:
    assert copied(book, "en") == {"a.md": "# A", "b.md": "# B", "plug.png": "-", "more/c.md": "# C"}
    assert handbook.translated(book, "en") == {}


def shape(page: Path) -> list[tuple[str, int]]:
    """What a page has, whatever its language: headings by level, rows of tables, items of lists, cautions."""
    text = prose(page)
    signs = {
        "#": r"^# ",
        "##": r"^## ",
        "###": r"^### ",
        "row": r"^\|",
        "item": r"^- ",
        "step": r"^\d+\. ",
        "!": r"^!!! ",
    }
    return [(name, len(re.findall(sign, text, flags=re.MULTILINE))) for name, sign in signs.items()]


@pytest.mark.parametrize("page", TRANSLATED, ids=lambda page: f"{page.parent.name}/{page.stem}")
def test_a_translation_says_the_same_as_its_page(page: Path) -> None:
    """Whoever changes a page is sent to its translations, or takes them out until somebody has looked."""
    original = HANDBOOK / page.name
    assert original.is_file()
    assert shape(page) == shape(original)
    assert blocks(page) == blocks(original)
    assert set(links(page)) == set(links(original))


def test_something_is_translated() -> None:
    assert {"safety.md", "in-the-bay.md"} <= {page.name for page in TRANSLATED}
