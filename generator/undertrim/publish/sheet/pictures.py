"""The drawings a sheet uses, each once, as SVG text under a short key."""

from collections.abc import Mapping
from io import BytesIO
from typing import Any

import segno

from undertrim.publish.drawings import clips, heads, marks, wires

Data = Mapping[str, Any]

_NEAREST = {"two-leg": "push", "snap-in": "push", "spring": "metal", "fibre": "coax", "strap": "cable"}
"""Sorts without a drawing of their own, and the one that looks most like them."""


class Pictures:
    """Collects drawings; every method returns the key of one."""

    def __init__(self) -> None:
        self.svg: dict[str, str] = {}

    def fastener(self, line: Data) -> str:
        """The head of what is turned, the shape of what is pulled; a plain mark where neither is known."""
        head = line.get("head")
        if head and head["family"] in heads.families():
            return self._keep(f"head {head['family']}", heads.head(head["family"], head["label"]))
        kind = str(line["kind"])
        name = _clip(kind, str(line.get("sort", "")))
        if name in clips.kinds():
            return self._keep(name, clips.clip(name, name))
        symbol = kind if kind in marks.symbols() else "screw"
        return self._keep(f"mark {symbol}", marks.sample(symbol, symbol))

    def tether(self, kind: str) -> str:
        """A plug, cable, rod or hose; a plug where the kind has no drawing."""
        name = f"tether-{_NEAREST.get(kind, kind)}"
        name = name if name in clips.kinds() else "tether-plug"
        return self._keep(name, clips.clip(name, kind))

    def wire(self, colour: Data) -> str:
        """A length of wire; empty for a colour that has no screen colour."""
        if not colour["base"]:
            return ""
        key = " ".join(["wire", colour["base"], *colour["tracers"]])
        return self._keep(key, wires.swatch(colour["base"], colour["tracers"], colour["words"]))

    def _keep(self, key: str, svg: str) -> str:
        self.svg.setdefault(key, svg)
        return key


def code(url: str) -> str:
    """A QR code of the address as SVG (ISO/IEC 18004, error correction level M)."""
    out = BytesIO()
    segno.make(url, micro=False, error="m").save(out, kind="svg", xmldecl=False, border=0, omitsize=True)
    return out.getvalue().decode()


def _clip(kind: str, sort: str) -> str:
    if kind == "scrivet":
        return f"scrivet-{sort.removesuffix('-pin')}"
    if kind == "clip":
        nearest = _NEAREST.get(sort, sort)
        return nearest if nearest in clips.kinds() else "push"
    return kind
