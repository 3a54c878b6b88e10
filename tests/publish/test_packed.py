"""A PDF in fewer bytes is the same document: to one reader its objects, to another its pictures."""

import io
import re
from typing import Any

import pypdfium2
import pytest
from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, StreamObject

from undertrim.publish.printed import pdf
from undertrim.publish.printed.packed import packed

SHEET: dict[str, Any] = {
    "title": "Otter",
    "width": 210,
    "height": 297,
    "pages": [
        {
            "shapes": [],
            "drawn": [],
            "window": {"x": 20, "y": 40, "width": 90, "height": 90},
            "says": f"Drawing {number}",
        }
        for number in range(2)
    ],
}
for number, sheet in enumerate(SHEET["pages"]):
    words = {"kind": "text", "size": 12, "pitch": 5, "bold": False, "heading": True, "x": 20, "y": 20}
    sheet["shapes"] = [{**words, "lines": [f"Page {number}: \u00f8 65 mm", "endstream endobj xref trailer"]}]
    pen = {"width": 0.35, "dash": []}
    sheet["drawn"] = [{"kind": "circle", "x": 40, "y": 40, "radius": 30, "pen": pen}]


@pytest.fixture(scope="module")
def plain() -> bytes:
    """As Typst writes it."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(pdf, "packed", lambda made: made)
        return pdf.compiled("template.typ", "template", SHEET)


def objects(made: bytes) -> list[Any]:
    """Every object that can be reached, each once, with its streams as they are drawn."""
    seen: dict[int, int] = {}
    found: list[Any] = []

    def opened(value: Any) -> Any:
        if isinstance(value, IndirectObject):
            if value.idnum not in seen:
                seen[value.idnum] = len(seen)
                found.append(opened(value.get_object()))
            return "to", seen[value.idnum]
        if isinstance(value, DictionaryObject):
            inside = {key: opened(value.raw_get(key)) for key in sorted(value)}
            return (inside, value.get_data()) if isinstance(value, StreamObject) else inside
        return [opened(item) for item in list.__iter__(value)] if isinstance(value, ArrayObject) else str(value)

    trailer = PdfReader(io.BytesIO(made)).trailer
    return [opened(trailer.raw_get(key)) for key in ("/Root", "/Info")] + found


def test_every_object_is_as_it_was(plain: bytes) -> None:
    assert objects(packed(plain)) == objects(plain)
    assert len(objects(plain)) > 30


def test_every_picture_is_as_it_was(plain: bytes) -> None:
    assert pictures(packed(plain)) == pictures(plain)
    assert len(set(pictures(plain))) == 2


def pictures(made: bytes) -> list[bytes]:
    with pypdfium2.PdfDocument(made) as document:
        return [bytes(page.render().buffer) for page in document]


def test_what_is_printed_is_packed(plain: bytes) -> None:
    made = pdf.compiled("template.typ", "template", SHEET)
    assert made == packed(plain) == packed(plain)
    assert len(made) < len(plain)
    kinds = set(re.findall(rb"/Type ?/(\w+)", made))
    assert {b"ObjStm", b"XRef"} <= kinds
    assert not kinds & {b"StructElem", b"Page", b"Catalog"}
