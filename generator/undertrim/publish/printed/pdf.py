"""Prints a vehicle as a PDF with Typst. A record is only data to it: it runs no code, reads no file."""

import json
import threading
from collections.abc import Callable, Mapping
from datetime import date
from functools import cache
from typing import Any, Literal

import typst

from undertrim.derive.fit.place import Vehicle
from undertrim.derive.visit.visit import Visit
from undertrim.publish import script_words
from undertrim.publish.printed.packed import packed
from undertrim.publish.printed.sheet import Paper, asking, glyphs, view, visited, wiring
from undertrim.record.photo_files import Album
from undertrim.record.source import Source
from undertrim.resources import inside

Sort = Literal["fitting", "wiring"]
"""A part of the sheet of a vehicle: what is needed to fit, and its wiring."""
WIRING = "wiring"
"""The name in the document under which its wiring begins."""

VIEWS: Mapping[Sort, Callable[[Mapping[str, Any], str, Paper, date], Mapping[str, Any]]] = {
    "fitting": view,
    "wiring": wiring.view,
}
"""How each of them is arranged, in the order in which they stand."""
_LOCAL = threading.local()


def render(facts: Mapping[str, Any], urls: Mapping[Sort, str], paper: Paper, made: date) -> bytes:
    """The sheet of a vehicle as tagged PDF (PDF/UA-1, ISO 14289-1): the same bytes for the same input.

    `facts` comes from `publish.facts.vehicle`. `urls` has the address of the page for each part that is wanted, empty where there is none; the
    wiring can be reached as the named destination `WIRING`. `made` is the day of printing.
    May be called from several threads at once. Raises typst.TypstError where the template fails.
    """
    return _printed("sheet.typ", {sort: VIEWS[sort](facts, url, paper, made) for sort, url in urls.items()})


def render_visit(made: Visit, url: str, paper: Paper, day: date, album: Album | None = None) -> bytes:
    """The sheet of a visit, in the same way; `url` is the address of the visit, `album` has the photographs of its record (none, if not given). Raises what `publish.facts.visit.of` raises too."""
    return _printed("visit.typ", visited.view(made, url, paper, day, album))


def render_questions(vehicle: Vehicle, source: Source, url: str, paper: Paper, day: date) -> bytes:
    """The measuring sheet of a vehicle, in the same way; `source` is that of its record."""
    return _printed("questions.typ", asking.view(vehicle, source, url, paper, day))


def _printed(template: str, shown: Mapping[str, Any]) -> bytes:
    return compiled(template, "sheet", shown)


def compiled(template: str, name: str, shown: Mapping[str, Any]) -> bytes:
    """A template with its data, which it knows by a name. Raises typst.TypstError."""
    inputs = {name: json.dumps(shown, ensure_ascii=False), "words": template_words()}
    made = compiler(template).compile(format="pdf", sys_inputs=inputs, pdf_standards=["ua-1"])
    assert isinstance(made, bytes)
    return packed(made)


def template_words() -> str:
    """The sentences that the templates name, for `words.typ` to say in the language of the reader; the fonts can show all of them."""
    return glyphs.legible(script_words.words(_templates()))


@cache
def _templates() -> tuple[tuple[str, str], ...]:
    folder = inside("publish", "printed", "templates")
    return tuple((path.name, path.read_text(encoding="utf-8")) for path in sorted(folder.rglob("*.typ")))


def compiler(template: str) -> typst.Compiler:
    """The compiler of a template in `publish/templates`, one for each thread: it does one thing at a time and keeps its last input."""
    kept: dict[str, typst.Compiler] = _LOCAL.__dict__.setdefault("compilers", {})
    if template not in kept:
        root = inside("publish", "printed", "templates")
        kept[template] = typst.Compiler(root / template, root=root, font_paths=_fonts(), ignore_system_fonts=True)
    return kept[template]


@cache
def _fonts() -> typst.Fonts:
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(glyphs.folder())])
