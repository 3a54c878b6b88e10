"""A made-up Spanish in Cyrillic letters, as one of the languages that the program speaks, for tests of a site in two languages."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import marked
import pytest

from undertrim.words import language as languages

LANGUAGES = sys.modules["undertrim.words.language"]
"""The module; the package has a function of this name."""


@contextmanager
def cyrillic_spanish(folder: Path) -> Iterator[None]:
    """While it lasts, `es` is the made-up language: the real one may lack a word, and has words that English has too."""
    file = folder / "locale/es/LC_MESSAGES"
    file.mkdir(parents=True)
    marked.po_file(file)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(LANGUAGES, "_locale", lambda: folder / "locale")
        languages.cache_clear()
        yield
    languages.cache_clear()
