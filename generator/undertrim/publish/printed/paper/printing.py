"""Prints pages as a PDF with Typst. The pages are only data to it, in absolute millimetres."""

from collections.abc import Sequence
from typing import Any

from undertrim.publish.printed import pdf
from undertrim.publish.printed.paper.layout import Page, data
from undertrim.publish.printed.paper.sheets import Paper
from undertrim.publish.printed.sheet import glyphs


def printed(pages: Sequence[Page], paper: Paper, title: str) -> bytes:
    """The pages as tagged PDF (PDF/UA-1, ISO 14289-1): the same bytes for the same input."""
    shown = {
        "title": glyphs.text(title),
        "width": paper.width,
        "height": paper.height,
        "pages": [_page(page) for page in pages],
    }
    return pdf.compiled("template.typ", "template", shown)


def _page(page: Page) -> dict[str, Any]:
    """A page; what is drawn counts from the corner of its window."""
    window = page.window
    return {
        "shapes": [data(shape) for shape in page.shapes],
        "window": {"x": window.left, "y": window.top, "width": window.width, "height": window.height},
        "drawn": [data(shape.moved(-window.left, -window.top)) for shape in page.drawn],
        "says": glyphs.text(page.says),
    }
