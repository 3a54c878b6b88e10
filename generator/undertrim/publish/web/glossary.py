"""The words that are explained where they stand: those in bold in the tables of the handbook's glossary, with what they mean.

    | **door liner, shield** | the sheet behind the trim panel |

They reach the pages as a script that calls `undertrimGlossary`, so that it also loads from a folder on disk.
"""

import re
from collections.abc import Iterator
from pathlib import Path

from undertrim.publish.encoding import compact

PAGE = "glossary.md"
SCRIPT = "assets/undertrim/glossary-words.js"

_ROW = re.compile(r"^\| *\*\*(?P<words>[^|*]+)\*\* *\| *(?P<meaning>[^|]+?) *\|\s*$", re.MULTILINE)
_MARKUP = str.maketrans("", "", "`*\\")
_LINK = re.compile(r"\[([^]]*)\]\([^)]*\)")


def script(handbook: Path) -> str:
    """The script, of no words where the handbook has no glossary. Raises OSError and UnicodeDecodeError as reading does."""
    page = handbook / PAGE
    entries = list(_entries(page.read_text(encoding="utf-8-sig"))) if page.is_file() else []
    return f"undertrimGlossary({compact(entries)});\n"


def _entries(text: str) -> Iterator[tuple[list[str], str]]:
    """The words for a thing, the first of which it is called by, and what it means, without Markdown."""
    for row in _ROW.finditer(text):
        words = [word.strip() for word in row["words"].split(",")]
        meaning = _LINK.sub(r"\1", row["meaning"]).translate(_MARKUP)
        yield words, meaning[:1].upper() + meaning[1:].rstrip(".") + "."
