"""Chooses the drawing for a fastener, tether, wire or part from its facts."""

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from undertrim.publish.drawings import clips, heads, panels, wires
from undertrim.publish.drawings.marks import Symbol

Facts = Mapping[str, Any]

_NEAREST = {"two-leg": "push", "snap-in": "push", "spring": "metal", "fibre": "coax", "strap": "cable"}
"""Sorts without a drawing of their own, and the one that looks most like them."""
_SYMBOLS: dict[str, Symbol] = {
    "screw": "screw",
    "bolt": "screw",
    "nut": "nut",
    "clip": "clip",
    "scrivet": "scrivet",
    "hook": "hook",
    "bond": "bond",
}
_EDGES = {"front": "left", "rear": "right"}


def fastener(line: Facts) -> str:
    """The head, clip or hook of a line of fasteners, as SVG."""
    head = line["head"]
    return _head(head["family"], head["label"]) if head else _clip(line["kind"], line["sort"], line["text"])


@lru_cache(maxsize=256)
def _head(family: str, label: str) -> str:
    return heads.head(family, label)


@lru_cache(maxsize=1024)
def _clip(kind: str, sort: str, title: str) -> str:
    return clips.clip(clip_name(kind, sort), title)


@lru_cache(maxsize=1024)
def _tether(kind: str, title: str) -> str:
    return clips.clip(tether_name(kind), title)


def tether(line: Facts) -> str:
    """A plug, cable, rod or hose, as SVG."""
    return _tether(line["kind"], line["kind_words"])


def wire(colour: Facts | None) -> str:
    """A short length of wire, as SVG; empty where the colour is not known."""
    if not colour or not colour["base"]:
        return ""
    return _wire(colour["base"], tuple(colour["tracers"]), colour["words"])


@lru_cache(maxsize=1024)
def _wire(base: str, tracers: tuple[str, ...], title: str) -> str:
    return wires.swatch(base, tracers, title)


def panel(step: Facts) -> str:
    """A part's outline with its fasteners where they are; empty where no places are recorded."""
    marks = [
        panels.Mark(_SYMBOLS[line["kind"]], _EDGES.get(edge, edge), count)
        for line in step["fasteners"]
        if line["fate"] != "leave"
        for edge, count in line["at"].items()
    ]
    return panels.panel(step["title"], marks, size="12em") if marks else ""


def clip_name(kind: str, sort: str) -> str:
    """The drawing for what is not turned: a clip, scrivet, hook or bond; a push clip where a clip has none of its own."""
    if kind == "scrivet":
        return f"scrivet-{sort.removesuffix('-pin')}"
    if kind == "clip":
        nearest = _NEAREST.get(sort, sort)
        return nearest if nearest in clips.kinds() else "push"
    return kind


def tether_name(kind: str) -> str:
    """The drawing for a tether; a plug where the kind has none."""
    name = f"tether-{_NEAREST.get(kind, kind)}"
    return name if name in clips.kinds() else "tether-plug"
