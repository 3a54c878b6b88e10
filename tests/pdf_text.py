"""The text of printed pages, as a reader copies it out."""

from contextlib import closing

from pypdfium2 import PdfDocument

WRITTEN = {"\r\n": "\n", "\x02": "-\n", "\ufffe": "-\n", "\u200b": ""}
"""What the reader gives for the end of a line, for a hyphen at one (by its release), and for a place where a long word may break."""


def texts(printed: bytes) -> tuple[str, ...]:
    """The text of each page, lines in reading order."""
    with closing(PdfDocument(printed)) as document:
        return tuple(_text(document, number) for number in range(len(document)))


def _text(document: PdfDocument, number: int) -> str:
    with closing(document[number]) as page, closing(page.get_textpage()) as text:
        found = str(text.get_text_bounded())
    for given, meant in WRITTEN.items():
        found = found.replace(given, meant)
    return found
