"""Chooses the drawing for a fastener, tether, wire or part from its facts."""

from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache

from undertrim.publish.encoding import Published
from undertrim.publish.pictures.drawings import clips, heads, marks, panels, plugs, svg, wires
from undertrim.resources import table
from undertrim.words import message, say, word

_FACING: Mapping[str, Mapping[str, panels.Edge]] = {
    "left": {"front": "right", "rear": "left"},
    "right": {"front": "left", "rear": "right"},
    "": {"front": "top", "rear": "bottom"},
}
"""Where front and rear are as one faces a panel from inside the car: mirrored on the two sides; seen from above where there is no side."""


def fastener(line: Published) -> str:
    """The head, clip or hook of a line of fasteners, as SVG that uses its symbol (`symbols`)."""
    return _used(*_fastener(line))


def tether(line: Published) -> str:
    """A plug, cable, rod or hose, in the same way."""
    return _used("clip", tether_name(line["kind"]))


def _fastener(line: Published) -> tuple[str, str]:
    """The sort of drawing, and its name."""
    head = line["head"]
    if head and head["family"] in heads.families():
        return "head", head["family"]
    return "clip", clip_name(line["kind"], line["sort"])


@lru_cache(maxsize=256)
def _used(sort: str, name: str) -> str:
    return svg.used(f"{sort}-{name}")


def symbols(steps: Iterable[Published]) -> str:
    """What the pictures of some steps use, each once: heads, clips and tethers."""
    found: dict[tuple[str, str], None] = {}
    for step in steps:
        found |= dict.fromkeys(_fastener(line) for line in step["fasteners"])
        found |= dict.fromkeys(("clip", tether_name(line["kind"])) for line in step["tethers"])
    return _hidden(*(_drawn(sort, name) for sort, name in sorted(found)))


@lru_cache(maxsize=256)
def _drawn(sort: str, name: str) -> str:
    return (heads.symbol if sort == "head" else clips.symbol)(f"{sort}-{name}", name)


def _hidden(*drawn: str) -> str:
    """What a page uses and shows nowhere by itself."""
    return svg.element("svg", *drawn, width=0, height=0, aria_hidden="true", **{"class": "ut-symbols"}) if drawn else ""


def wire(colour: Published | None) -> str:
    """A short length of wire, as SVG that uses the symbol of its colour (`wire_symbols`); empty where the colour is not known."""
    if not colour or not colour["base"]:
        return ""
    return _wire(_wire_id(colour), colour["words"])


@lru_cache(maxsize=1024)
def _wire(name: str, title: str) -> str:
    used = svg.element("use", href=f"#{name}")
    return svg.element("svg", used, role="img", aria_label=title, **{"class": "ut-wire"})


def wire_symbols(facts: object) -> str:
    """The symbols of every wire colour that occurs anywhere in some facts, each once, and those of the ends of contacts."""
    found = {_wire_id(colour): colour for colour in _colours(facts)}
    return _hidden(
        *plugs.ends(), *(wires.symbol(colour["base"], tuple(colour["tracers"])) for _, colour in sorted(found.items()))
    )


def _wire_id(colour: Published) -> str:
    return wires.named(colour["base"], colour["tracers"])


def _colours(facts: object) -> Iterator[Published]:
    """Every wire colour in a structure of mappings and lists, in no order: a vehicle has ten thousand of them."""
    left = [facts]
    while left:
        found = left.pop()
        if type(found) is list:
            left += [inner for inner in found if type(inner) is dict or type(inner) is list]
        elif type(found) is dict and found.get("base") and "tracers" in found:
            yield found
        elif type(found) is dict:
            left += [inner for inner in found.values() if type(inner) is dict or type(inner) is list]


def panel(step: Published) -> panels.Panel | None:
    """What a step takes off or puts back, with its fasteners where they are; None where no places are recorded."""
    side = step["side"] or step["on_side"]
    told = {edge for line in step["fasteners"] if line["fate"] != "leave" for edge in line["at"]}
    if not told:
        return None
    facing, lines = _FACING[side], [line for line in step["fasteners"] if line["fate"] != "leave" and line["at"]]
    found = tuple(
        panels.Mark(mark_name(line["kind"]), facing.get(edge, edge), count)
        for line in lines
        for edge, count in line["at"].items()
    )
    upper = "front" if not side and told & {"front", "rear"} else "top"
    edges = {"top": upper, **({facing["front"]: "front"} if side else {})}
    names = {mark_name(line["kind"]): _plural(line["kind"]) for line in lines}
    return panels.Panel(found, {edge: say(message(f"edges/{name}")) for edge, name in edges.items()}, names)


def _plural(kind: str) -> str:
    return say(word("fasteners", kind, "plural")) if kind in table("fasteners") else kind


def panel_title(step: Published) -> str:
    """What the picture of a part is called."""
    return say(message("drawings/panel", part=step["title"]))


def panel_on_page(step: Published, *, remove: bool) -> str:
    """The same as it stands on a page: drawn where a part comes off, and used again where it goes back."""
    drawn = panel(step)
    if not drawn:
        return ""
    name = f"panel-{step['part']}@{step['side']}"
    inside = svg.element("g", drawn.inside, id=name, **drawn.looks) if remove else svg.element("use", href=f"#{name}")
    wide, high = drawn.box
    about = {"viewBox": f"0 0 {wide} {high}", "role": "img", "aria_label": panel_title(step)}
    return svg.element("svg", inside, **about, **{"class": "ut-panel"})


def mark_name(kind: str) -> str:
    """The mark for a kind of fastener; a plain one for a kind without any."""
    name = table("fasteners").get(kind, {}).get("mark", "")
    return name if name in marks.symbols() else "other"


def clip_name(kind: str, sort: str) -> str:
    """The drawing for what is not turned: that of its sort, else of its kind; a plain mark for a kind without any."""
    row = table("fasteners").get(kind, {})
    own = f"{kind}-{sort}"
    name = own if own in clips.kinds() else row.get("sorts", {}).get(sort, row.get("drawing", ""))
    return name if name in clips.kinds() else "other"


def tether_name(kind: str) -> str:
    """The drawing for a tether; a plain mark where the kind has none."""
    name = table("tethers")["kind"].get(kind, {}).get("drawing", "")
    return name if name in clips.kinds() else "other"
