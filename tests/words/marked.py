"""A made-up language, and records in another alphabet: what is then seen in Latin letters was said by nobody's catalogue.

The language is made as translators make one, from the template of all texts. Its letters are Cyrillic, those of the records' own texts
Greek. Names of units, colours and drives, ids and addresses, and what was typed as a value stay as they are in every language.
"""

import copy
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from string import Formatter
from typing import Any

from babel.messages.pofile import read_po, write_po
from marking import _PLAIN as PLAIN

import typed
from undertrim.record.source import Pointer
from undertrim.record.store import Entry, Workspace
from undertrim.words import Language
from undertrim.words.language import read

ROOT = Path(__file__).parents[2]
_LATIN = "abcdefghijklmnopqrstuvwxyz"
_CYRILLIC = str.maketrans(_LATIN + _LATIN.upper(), "абцдефгхижклмнопярстувшьузАБЦДЕФГХИЖКЛМНОПЯРСТУВШЬУЗ")
_GREEK = str.maketrans(_LATIN + _LATIN.upper(), "αβψδεφγηιξκλμνοπθρστυωςχζσΑΒΨΔΕΦΓΗΙΞΚΛΜΝΟΠΘΡΣΤΥΩΣΧΖΣ")
_WORD = re.compile(r"[A-Za-z]{2,}(?:[-/'][A-Za-z]+)*")


@cache
def language() -> Language:
    """The made-up language `qq`, from a template that Babel has extracted."""
    with tempfile.TemporaryDirectory() as folder:
        return read("qq", po_file(Path(folder)))


def po_file(folder: Path) -> Path:
    """Its gettext file, made in a folder."""
    template = folder / "undertrim.pot"
    extract = ("--quiet", "extract", "-F", "pyproject.toml", "-o", template, "generator", "schema", "site_overrides")
    subprocess.run([sys.executable, "-m", "babel.messages.frontend", *extract], cwd=ROOT, check=True)
    with template.open("rb") as file:
        found = read_po(file)
    for entry in found:
        if entry.id:
            turned = as_it_stands if stands(entry) else letters
            entry.string = turned(entry.id) if isinstance(entry.id, str) else tuple(map(turned, entry.id))
    with (folder / "undertrim.po").open("wb") as out:
        write_po(out, found)
    return folder / "undertrim.po"


def stands(entry: Any) -> bool:
    """Whether a text is no template of ours: a docstring, a word of a schema, or one that argparse formats."""
    remarks = any(remark.startswith("Not a template") for remark in entry.auto_comments)
    return remarks or str(entry.context).startswith("argparse/")


_PERCENT = re.compile(r"(%\(\w+\)[a-z]|%[srd%])")


def as_it_stands(text: str) -> str:
    """Such a text in the made-up language; what argparse puts in stays."""
    pieces = _PERCENT.split(text)
    return "".join(piece if place % 2 else piece.translate(_CYRILLIC) for place, piece in enumerate(pieces))


def letters(text: str) -> str:
    """A text of the program in the made-up language; the names of its values stay."""
    made = []
    for words, name, how, _ in Formatter().parse(text):
        made.append(words.replace("{", "{{").replace("}", "}}").translate(_CYRILLIC))
        if name is not None:
            made.append("{" + name + (f":{how}" if how else "") + "}")
    return "".join(made)


@cache
def records() -> dict[Path, Entry]:
    """The shipped records, and the one of what is seldom used, with their own texts in Greek letters."""
    from marking import made, put

    changed: dict[Path, Any] = {path: copy.deepcopy(typed.data(path)) for path in typed.records()}
    for use in (use for uses in typed.uses().values() for use in uses):
        if _own_words(use):
            put(changed[use.path], use.pointer, str(use.value).translate(_GREEK))
    return {path: made(path, data) for path, data in changed.items()}


def _own_words(use: typed.Use) -> bool:
    plain = not {"enum", "pattern", "quantity"} & use.node.schema.keys()
    return isinstance(use.value, str) and use.node.home[1][-1] in PLAIN and plain


@cache
def _allowed() -> frozenset[str]:
    """Latin words that may be seen in any language: ids and values as they were typed."""
    found: set[str] = set()
    for path, entry in records().items():
        found |= {path.stem, path.parent.name, *(str(word) for word in _typed(entry.source.data, ()))}
    return frozenset(word.lower() for text in found for word in _WORD.findall(text))


def _typed(data: Any, pointer: Pointer) -> Iterator[str]:
    """Keys of mappings that are ids or paths, and scalars that are no words of ours."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield str(key)
            yield from _typed(value, (*pointer, key))
    elif isinstance(data, list):
        for value in data:
            yield from _typed(value, pointer)
    elif isinstance(data, str) and not data.isascii():
        return
    elif isinstance(data, str):
        yield data


SYMBOLS = frozenset(
    "mm cm in ft mA mV kHz Hz dB ohm ohms min kg Nm AWG lbf ISO DIN IEC ANSI UTC PDF QR Undertrim undertrim yaml json pdf html www https http records vehicles site example dBV".lower().split()
)
"""Units, standards and our own name."""


def unmarked(text: str) -> list[str]:
    """The Latin words of a text that stand there in no language."""
    allowed = _allowed() | SYMBOLS
    return [word for word in dict.fromkeys(_WORD.findall(text)) if word.lower() not in allowed]


def workspace(folder: Path) -> Workspace:
    """The records in Greek letters as files of a workspace."""
    raise NotImplementedError(folder)
