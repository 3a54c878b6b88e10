"""A made-up language, and records in another alphabet: what is then seen in Latin letters was said by nobody's catalogue.

The language is made as translators make one, from the template of all texts. Its letters are Cyrillic, those of the records' own texts
Greek. Names of units, colours and drives, ids and addresses, and what was typed as a value stay as they are in every language.
"""

import copy
import json
import re
import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from string import Formatter
from typing import Any

import extracting
from babel.messages.pofile import read_po, write_po
from marking import _PLAIN as PLAIN

import typed
from undertrim.check.register import rule_ids
from undertrim.record.fields import Node, root
from undertrim.record.store import Entry, Workspace
from undertrim.record.wire_colour import colours
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
    extracting.extract(template, "generator", "schema", "site_overrides")
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
        if _own_words(use) and use.pointer[0] != "conflicts":  # a claim is typed like the fact
            put(changed[use.path], use.pointer, str(use.value).translate(_GREEK))
    return {path: made(path, data) for path, data in changed.items()}


def _own_words(use: typed.Use) -> bool:
    plain = not {"enum", "pattern", "quantity"} & use.node.schema.keys()
    return isinstance(use.value, str) and use.node.home[1][-1] in PLAIN and plain


@cache
def _allowed() -> frozenset[str]:
    """Latin words that may be seen in any language: ids, values as they were typed, and letters that stand for a job."""
    found: set[str] = {*rule_ids(), SELDOM_ADDRESS}
    for path, entry in records().items():
        found |= {path.stem, path.parent.name, *_ids(entry.source.data, root(typed.records()[path]))}
    return frozenset(piece for text in found for word in _WORD.findall(text) for piece in word.lower().split("/"))


def _ids(data: Any, node: Node | None) -> Iterator[str]:
    """Keys that are ids, and texts that are neither words of a list that the schema offers nor in Greek letters."""
    if isinstance(data, dict):
        for key, value in data.items():
            if not node or key not in node.schema.get("properties", ()):
                yield str(key)
            yield from _ids(value, node.child(key) if node else None)
    elif isinstance(data, list):
        for place, value in enumerate(data):
            yield from _ids(value, node.child(place) if node else None)
    elif isinstance(data, str) and data.isascii() and not (node and _ours(node)):
        yield data


def _ours(node: Node) -> bool:
    """Whether what is typed is a word that the schema offers, or the colour of a wire: people see it in their language."""
    return "enum" in node.schema or node.schema.get("title") == "Colour"


SELDOM_ADDRESS = "brindleway/otter-2014-2018-early"

SYMBOLS = frozenset(
    "mm cm in ft ms mA mV kHz Hz dB dBV ohm ohms kohm Mohm cmil min kg Nm AWG lbf rms Ah ISO DIN IEC ANSI NFPA UTC SAE ASTM CFR PDF QR UN EU".lower().split()
)
"""Units, and names of standards and sorts of file."""
OURS = frozenset({"undertrim", "records", "vehicles", "yaml", "json", "pdf", "html"})
"""Our own name, folders and endings of files."""
DRIVES = frozenset({"ph", "pz"})
"""Sizes of drives, as they stand on the tool."""


@cache
def letters_of_colours() -> re.Pattern[str]:
    """Letter codes of wires: `RD/WH`."""
    codes = "|".join(sorted((colour.code for colour in colours()), key=len, reverse=True))
    return re.compile(rf"\b(?:{codes})(?:/(?:{codes}))*\b")


_PLACE = re.compile(r"\b[a-z][a-z-]*/[A-Z]?\d+\b|\b[a-z_]+(?:/[\w-]+){2,}|'[a-z_]+/[\w-]+'")
"""A pin by its plug and position, or a fact by the keys that lead to it."""
_UNSEEN = dict.fromkeys(map(ord, "\u200b\u2060\u00ad"))


def unmarked(text: str) -> list[str]:
    """The Latin words of a text that stand there in no language."""
    allowed = _allowed() | SYMBOLS | OURS | DRIVES
    bare = letters_of_colours().sub("", _PLACE.sub("", text.translate(_UNSEEN)))
    return [word for word in dict.fromkeys(_WORD.findall(bare)) if not set(word.lower().split("/")) <= allowed]


def workspace(folder: Path) -> Workspace:
    """The records in Greek letters as files of a workspace."""
    for path, entry in records().items():
        target = folder / (
            path.relative_to(ROOT) if path != typed.SELDOM else f"records/vehicles/{SELDOM_ADDRESS}.yaml"
        )
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(f"{yaml(_filed(path, entry.source.data))}\n", encoding="utf-8")
    return Workspace(folder)


def _filed(path: Path, data: Any) -> Any:
    """A record that is called as its file is, which has a name in Latin letters."""
    named, own = copy.deepcopy(data), typed.data(path)
    for block, as_typed in ((named, own), (named.get("vehicle", {}), own.get("vehicle", {}))):
        block.update({key: as_typed[key] for key in ("maker", "make", "model") if key in block})
    return named


def yaml(data: Any, indent: str = "") -> str:
    """A record as YAML."""
    if isinstance(data, dict) and data:
        return "".join(f"\n{indent}{key}: {yaml(value, indent + '  ')}" for key, value in data.items())
    if isinstance(data, list) and data:
        return "".join(f"\n{indent}- {yaml(value, indent + '  ').lstrip()}" for value in data)
    if isinstance(data, str):
        return data if _PLAIN_SCALAR.fullmatch(data) else json.dumps(data, ensure_ascii=False)
    return json.dumps(data)


_PLAIN_SCALAR = re.compile(r"[\w.-][\w ./%+-]*")
