"""Photographs for tests, made by the library that the program reads them with: what a camera would write, and what goes wrong with that."""

import re
from io import BytesIO
from pathlib import Path

from PIL import Image

_FORMATS = {".jpg": "JPEG", ".jpeg": "JPEG", ".png": "PNG", ".webp": "WEBP"}


def lay(path: Path, what: str) -> None:
    """Write a photograph, described in words: `900 x 600, turned`; `located`, `cut short`, `as JPEG`, `of 2 frames`, `of 700 KB`."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(made(path.suffix, what))


def made(ending: str, what: str) -> bytes:
    """The bytes of such a file whose name ends so."""
    width, height = re.findall(r"\d+", what)[:2]
    picture = Image.new("RGB", (int(width), int(height)), "grey")
    stream, format_ = BytesIO(), _said("as", what) or _FORMATS[ending]
    more = [Image.new("RGB", picture.size, "red")] * (int(_said("of", what, "frames") or 1) - 1)
    picture.save(stream, format_, exif=_notes(what), save_all=bool(more), append_images=more)
    content = stream.getvalue()
    content += b"\0" * (int(_said("of", what, "KB") or 0) * 1000)
    return content[: len(content) // 2] if "cut short" in what else content


def _said(before: str, what: str, after: str = "") -> str:
    found = re.search(rf"\b{before} (\w+) ?{after}(?:,|$)", what)
    return found[1] if found else ""


def _notes(what: str) -> Image.Exif:
    """As a phone writes them: which way is up, and where it was."""
    notes = Image.Exif()
    if "turned" in what:
        notes[0x0112] = 6
    if "located" in what:
        notes.get_ifd(0x8825).update({1: "N", 2: (52.0, 31.0, 12.0), 3: "E", 4: (13.0, 24.0, 18.0)})
    return notes
