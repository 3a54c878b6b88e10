"""Brings the gettext files of every language up to date with the English: `make words` runs it on the template that it has written.

A new text comes in empty, one that is gone goes, and one whose English changed keeps its old translation with the mark `fuzzy`: it is not said
until somebody has looked at it and has taken the mark off. `python tests/update_languages.py es` begins a language.
"""

import sys
from collections import defaultdict
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from undertrim.words.docs import ARGUMENTS
from undertrim.words.language import _locale, tags

ROOT = Path(__file__).parents[1]
UNTRANSLATED = ("check/rules/",)
"""Where contexts begin of texts that stay English in this version (tests/words/test_languages_complete.py has the reasons)."""


def rooms(template: Path) -> dict[str, Catalog]:
    """The template by room: the first piece of each text's context."""
    with template.open("rb") as file:
        found = read_po(file)
    made: dict[str, Catalog] = defaultdict(lambda: Catalog(charset="utf-8"))
    for entry in found:
        context = str(entry.context)
        if entry.id and not context.startswith(UNTRANSLATED):
            room = context.replace("#", "/").split("/")[0]
            made[room].add(entry.id, context=context, auto_comments=entry.auto_comments)
    return made


def updated(file: Path, tag: str, template: Catalog) -> None:
    """Write one file anew, with what it said already."""
    if file.is_file():
        with file.open("rb") as opened:
            there = read_po(opened, locale=tag)
    else:
        there = Catalog(locale=tag, project="Undertrim", charset="utf-8", fuzzy=False)
    dates = there.creation_date, there.revision_date
    there.update(template, no_fuzzy_matching=True, update_header_comment=False)
    _changed(there, template)
    there.obsolete.clear()
    there.creation_date, there.revision_date = dates  # else each file would change each time
    with file.open("wb") as out:
        write_po(out, there, width=0, no_location=True)


def _changed(there: Catalog, template: Catalog) -> None:
    """Give what was said of a text to its new English, in doubt; gettext itself would look for a likeness, and we know the code.

    What is said of arguments has one context for all of them, which tells none from another.
    """
    gone = {str(key[1]): entry.string for key, entry in there.obsolete.items() if key[1] != ARGUMENTS}
    for entry in template:
        if entry.id and (said := gone.get(str(entry.context))):
            now = there.get(entry.id, entry.context)
            if now and not now.string and isinstance(said, str) == isinstance(entry.id, str):
                now.string = said
                now.flags.add("fuzzy")


def main(asked: list[str]) -> None:
    """Update the languages there are, or begin those that are asked for."""
    made = rooms(ROOT / ".undertrim" / "words" / "undertrim.pot")
    for tag in asked or [tag for tag in tags() if tag != "en"]:
        folder = _locale() / tag / "LC_MESSAGES"
        folder.mkdir(parents=True, exist_ok=True)
        for path in set(folder.glob("*.po")) - {folder / f"{room}.po" for room in made}:
            path.unlink()
        for room, template in made.items():
            updated(folder / f"{room}.po", tag, template)


if __name__ == "__main__":
    main(sys.argv[1:])
