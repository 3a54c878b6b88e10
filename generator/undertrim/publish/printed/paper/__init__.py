"""Paper templates in true size: an opening, and gear over it, to print and hold against the car."""

from undertrim.publish.printed.paper.drawing import NotRecorded, Template, drawing
from undertrim.publish.printed.paper.printing import printed
from undertrim.publish.printed.paper.sheets import A4, LETTER, PAPERS, NoRoom, Paper, pages
from undertrim.publish.printed.paper.words import text
from undertrim.words import message, say

__all__ = ["A4", "LETTER", "MARGIN", "PAPERS", "NoRoom", "NotRecorded", "Paper", "Template", "render"]

MARGIN = 10.0
"""mm that stay white at every edge; common practice, no source: most printers need less."""


def render(template: Template, paper: Paper = A4, margin: float = MARGIN) -> bytes:
    """The template as PDF, one tile a page, without touching the disk: the same bytes for the same input.

    `margin` is in mm at every edge. Raises NotRecorded where the opening has no outline, NoRoom where its notes leave no
    room for it, and ValueError for a margin that is negative or leaves less than 160 mm of width.
    """
    drawn = drawing(template)
    words = text(template, drawn)
    sheets = pages(words, drawn, paper, margin)
    return printed(sheets, paper, say(message("paper/document", title=words.title, what=words.shows)))
