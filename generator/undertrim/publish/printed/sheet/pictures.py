"""The drawings a sheet uses, each once, as SVG text under a short key that means nothing: no title or name can spoil it on the way."""

from dataclasses import replace
from functools import cache
from io import BytesIO

import segno

from undertrim.publish.encoding import Published
from undertrim.publish.pictures import openings as opening_pictures
from undertrim.publish.pictures.drawings import clips, heads, marks, wires
from undertrim.publish.pictures.small import clip_name, panel, panel_title, tether_name
from undertrim.publish.printed.sheet import glyphs

_PANEL_WIDTHS = {"remove": 18.0, "refit": 14.0}
"""How wide a panel is in mm, by the kind of step."""
_LETTERS = 2.2
"""How high the letters beside it are in mm."""
BESIDE = 300
"""The width of an opening's drawing in its units, which says how large its lettering is, where it stands beside its facts."""


class Pictures:
    """Collects drawings; every method returns the key of one."""

    def __init__(self) -> None:
        self._keys: dict[str, str] = {}
        self._marks: dict[str, str] = {}

    @property
    def svg(self) -> dict[str, str]:
        """The drawings by their keys."""
        return {key: svg for svg, key in self._keys.items()}

    def fastener(self, line: Published) -> str:
        """The head of what is turned, the shape of what is pulled; a plain mark where neither is known."""
        head = line.get("head")
        if head and head["family"] in heads.families():
            return self.keep(_head(head["family"]))
        return self.keep(_clip(clip_name(str(line["kind"]), str(line.get("sort", "")))))

    def tether(self, kind: str) -> str:
        """A plug, cable, rod or hose; a plug where the kind has no drawing."""
        return self.keep(_clip(tether_name(kind)))

    def panel(self, step: Published) -> list[dict[str, str | float]]:
        """Where the fasteners are on what comes off or goes back, and how wide that is in mm; nothing where it is not recorded. What each mark is stands once on the sheet (`key`)."""
        wide = _PANEL_WIDTHS.get(step["kind"])
        drawn = panel(step) if wide else None
        if not wide or not drawn:
            return []
        self._marks |= drawn.key
        small, title = replace(drawn, key={}, letters=_LETTERS * drawn.box[0] / wide), panel_title(step)
        return [{"picture": self.keep(small.picture(title, f"{wide}mm")), "title": title, "wide": wide}]

    @property
    def key(self) -> list[dict[str, str]]:
        """The marks of the panels so far, with what they are."""
        return [
            {"picture": self.keep(marks.sample(name, words)), "title": words} for name, words in self._marks.items()
        ]

    def wire(self, colour: Published) -> str:
        """A length of wire; empty for a colour that has no screen colour."""
        if not colour["base"]:
            return ""
        return self.keep(wires.swatch(colour["base"], colour["tracers"], colour["words"]))

    def openings(self, drawn: Published, units: int = BESIDE) -> list[dict[str, str]]:
        """The drawings of an opening with their titles; the fewer units they are wide, the larger is what is written in them."""
        return [
            {"picture": self.keep(svg), "title": title}
            for title, svg in opening_pictures.openings(glyphs.printable(drawn), units)
        ]

    def keep(self, svg: str) -> str:
        """The key of a drawing."""
        return self._keys.setdefault(svg, f"p{len(self._keys)}")


@cache  # small pictures stand beside the words that name them, so a shape is one picture whatever it is called
def _head(family: str) -> str:
    return heads.head(family, family)


@cache
def _clip(name: str) -> str:
    return clips.clip(name, name)


def code(url: str) -> str:
    """A QR code of the address as SVG (ISO/IEC 18004, error correction level M)."""
    out = BytesIO()
    segno.make(url, micro=False, error="m").save(out, kind="svg", xmldecl=False, border=0, omitsize=True)
    return out.getvalue().decode()
