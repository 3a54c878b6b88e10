"""The drawings a sheet uses, each once, as SVG text under a short key."""

from collections.abc import Mapping
from io import BytesIO
from itertools import chain, count
from typing import Any

import segno

from undertrim.publish import opening_pictures
from undertrim.publish.drawings import clips, heads, wires
from undertrim.publish.pictures import clip_name, tether_name
from undertrim.publish.sheet import glyphs

Data = Mapping[str, Any]


class Pictures:
    """Collects drawings; every method returns the key of one."""

    def __init__(self) -> None:
        self.svg: dict[str, str] = {}

    def fastener(self, line: Data) -> str:
        """The head of what is turned, the shape of what is pulled; a plain mark where neither is known."""
        head = line.get("head")
        if head and head["family"] in heads.families():
            return self.keep(f"head {head['family']}", heads.head(head["family"], head["label"]))
        kind = str(line["kind"])
        name = clip_name(kind, str(line.get("sort", "")))
        return self.keep(name, clips.clip(name, name))

    def tether(self, kind: str) -> str:
        """A plug, cable, rod or hose; a plug where the kind has no drawing."""
        name = tether_name(kind)
        return self.keep(name, clips.clip(name, kind))

    def wire(self, colour: Data) -> str:
        """A length of wire; empty for a colour that has no screen colour."""
        if not colour["base"]:
            return ""
        key = " ".join(["wire", colour["base"], *colour["tracers"]])
        return self.keep(key, wires.swatch(colour["base"], colour["tracers"], colour["words"]))

    def openings(self, drawn: Data) -> list[dict[str, str]]:
        """The drawings of an opening with their titles."""
        return [
            {"picture": self.keep(f"opening {title}", svg), "title": title}
            for title, svg in opening_pictures.openings(glyphs.printable(drawn))
        ]

    def keep(self, name: str, svg: str) -> str:
        """The key of a drawing: its name, and a number where another drawing has that name."""
        names = chain([name], (f"{name} {number}" for number in count(2)))
        return next(key for key in names if self.svg.setdefault(key, svg) == svg)


def code(url: str) -> str:
    """A QR code of the address as SVG (ISO/IEC 18004, error correction level M)."""
    out = BytesIO()
    segno.make(url, micro=False, error="m").save(out, kind="svg", xmldecl=False, border=0, omitsize=True)
    return out.getvalue().decode()
