"""Paper templates in true size: an opening, and gear over it, to print and hold against the car."""

from collections.abc import Iterable
from dataclasses import dataclass

from undertrim.publish.printed.paper import printing
from undertrim.publish.printed.paper.drawing import NotRecorded, Template, drawing
from undertrim.publish.printed.paper.kinds import room
from undertrim.publish.printed.paper.layout import Page
from undertrim.publish.printed.paper.sheets import A4, LETTER, PAPERS, NoRoom, Paper, pages
from undertrim.publish.printed.paper.words import text
from undertrim.words import message, say

__all__ = [
    "A4", "LETTER", "MARGIN", "PAPERS", "NoRoom", "NotRecorded", "Paper", "Sheets", "Template", "laid_out", "prepared", "printed",
    "render",
]  # fmt: skip

MARGIN = 10.0
"""mm that stay white at every edge; common practice, no source: most printers need less."""


@dataclass(frozen=True, slots=True)
class Sheets:
    """A template as it lies on its sheets, one tile a page: the car, what is shown, the pages."""

    car: str
    shows: str
    pages: tuple[Page, ...]


def laid_out(template: Template, paper: Paper = A4, margin: float = MARGIN) -> Sheets:
    """The template on as many sheets as it needs.

    `margin` is in mm at every edge. Raises NotRecorded where the opening has no outline, NoRoom where its notes leave no
    room for it, and ValueError for a margin that is negative or leaves less than 160 mm of width.
    """
    drawn = drawing(template)
    words = text(template, drawn)
    return Sheets(words.title, words.shows, pages(words, drawn, paper, margin))


def prepared(template: Template, paper: Paper = A4, margin: float = MARGIN) -> Sheets | None:
    """The same where it is worth having before somebody asks: nobody glues six sheets together for a plain rectangle. Raises what `laid_out` raises."""
    found = laid_out(template, paper, margin)
    return None if len(found.pages) > 1 and room(template.opening).by_ruler else found


def printed(templates: Iterable[Sheets], paper: Paper, title: str) -> bytes:
    """Templates as one PDF, each beginning a page, without touching the disk: the same bytes for the same input."""
    return printing.printed([page for template in templates for page in template.pages], paper, title)


def render(template: Template, paper: Paper = A4, margin: float = MARGIN) -> bytes:
    """One template as PDF. Raises what `laid_out` raises."""
    found = laid_out(template, paper, margin)
    return printed([found], paper, say(message("paper/document", title=found.car, what=found.shows)))
