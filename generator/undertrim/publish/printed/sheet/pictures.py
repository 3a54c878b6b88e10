"""The drawings a sheet uses, each once, as SVG text under a short key that means nothing: no title or name can spoil it on the way."""

from io import BytesIO

import segno

from undertrim.publish.encoding import Published
from undertrim.publish.pictures import openings
from undertrim.publish.pictures.drawings import clips, heads, wires
from undertrim.publish.pictures.small import clip_name, tether_name
from undertrim.publish.printed.sheet import glyphs

BESIDE, COLUMN = 300, 320
"""The width of an opening's drawing in its units, which says how large its lettering is: beside its facts, and in a column of steps."""


class Pictures:
    """Collects drawings; every method returns the key of one."""

    def __init__(self) -> None:
        self._keys: dict[str, str] = {}

    @property
    def svg(self) -> dict[str, str]:
        """The drawings by their keys."""
        return {key: svg for svg, key in self._keys.items()}

    def fastener(self, line: Published) -> str:
        """The head of what is turned, the shape of what is pulled; a plain mark where neither is known."""
        head = line.get("head")
        if head and head["family"] in heads.families():
            return self.keep(heads.head(head["family"], head["label"]))
        kind = str(line["kind"])
        name = clip_name(kind, str(line.get("sort", "")))
        return self.keep(clips.clip(name, name))

    def tether(self, kind: str) -> str:
        """A plug, cable, rod or hose; a plug where the kind has no drawing."""
        name = tether_name(kind)
        return self.keep(clips.clip(name, kind))

    def wire(self, colour: Published) -> str:
        """A length of wire; empty for a colour that has no screen colour."""
        if not colour["base"]:
            return ""
        return self.keep(wires.swatch(colour["base"], colour["tracers"], colour["words"]))

    def openings(self, drawn: Published, width: int = BESIDE) -> list[dict[str, str]]:
        """The drawings of an opening with their titles, so many units wide."""
        found = openings.openings(glyphs.printable(drawn), width)
        return [{"picture": self.keep(svg), "title": title} for title, svg in found]

    def keep(self, svg: str) -> str:
        """The key of a drawing."""
        return self._keys.setdefault(svg, f"p{len(self._keys)}")


def code(url: str) -> str:
    """A QR code of the address as SVG (ISO/IEC 18004, error correction level M)."""
    out = BytesIO()
    segno.make(url, micro=False, error="m").save(out, kind="svg", xmldecl=False, border=0, omitsize=True)
    return out.getvalue().decode()
