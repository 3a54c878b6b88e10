"""What the pages show is what the program says: the handbook's record with its mistakes, the readme's tours.

Where a message has changed on purpose, `.venv/bin/python tests/shown.py` writes the new ones into the pages.
"""

from pathlib import Path

import pytest

from pages import Block, blocks
from shown import LESSON, PATH, SHOWN, lesson, mistaken, record, said

CHANGES = [block for block in blocks(LESSON) if block.language == "diff"]


@pytest.mark.parametrize("page", SHOWN, ids=[page.name for page in SHOWN])
def test_the_answers_shown_are_the_programs(page: Path) -> None:
    assert blocks(page) == list(SHOWN[page]()), "run .venv/bin/python tests/shown.py"


def test_the_lesson_begins_with_the_path_of_its_record() -> None:
    assert blocks(LESSON)[0] == Block("text", f"{PATH}\n")


def test_the_lessons_record_passes() -> None:
    assert said(record()) == "1 record checked, no problems\n"
    assert [block for block in lesson() if block.language == "text"][-1].body == said(record())


def test_there_are_mistakes_to_learn_from() -> None:
    assert len(CHANGES) >= 8


@pytest.mark.parametrize("change", CHANGES, ids=[change.body.splitlines()[-1][:40] for change in CHANGES])
def test_a_mistake_of_the_lesson_is_an_error(change: Block) -> None:
    assert ": error: " in said(mistaken(change))
