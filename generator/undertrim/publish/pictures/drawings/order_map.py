"""What hides what as a small map: what comes off first stands at the top, lines lead down to what it makes way for."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from undertrim.publish.pictures.drawings import lettering, svg
from undertrim.publish.pictures.drawings.car import rounded
from undertrim.publish.pictures.drawings.layers import Edge, Item, acyclic, groups, layered, reduced
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Line

WIDTH = 340.0
"""Of the map, in drawing units: px on a phone."""
_MOST = 3
"""Boxes in a row: more leave no room for names."""
_GAP, _PASS, _WIDEST = 8.0, 10.0, 150.0
_APART, _PAD = 22.0, 7.0


_FOOT = 48.0
"""The height of the lower part of a box with a link for each side: at least 44 px on a page, also where the map is a little smaller than it is drawn."""


@dataclass(frozen=True, slots=True)
class Rows:
    """How high a box is at least, and how far one row is from the next."""

    least: float
    between: float


TOUCHED, PRINTED = Rows(47, 24), Rows(24, 13)
"""On a screen, where a box is a link; on paper, where nobody touches it."""


@dataclass(frozen=True, slots=True)
class Link:
    """Where a box leads, with what it is called there; of a box for both sides one for each side."""

    words: str
    href: str
    label: str


@dataclass(frozen=True, slots=True)
class Node:
    """A part, or what parts come off for: its name and links, what must be off before it, and by which ways else; places are those in the list."""

    name: str
    goal: bool
    links: Sequence[Link]
    after: Sequence[int]
    either: Sequence[int] = ()
    attributes: Mapping[str, str | float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Box:
    """A node where it is drawn, with the lines of its name."""

    node: Node
    left: float
    top: float
    width: float
    height: float
    foot: float
    lines: tuple[str, ...]

    @property
    def middle(self) -> float:
        """Where lines come and go."""
        return self.left + self.width / 2

    @property
    def bottom(self) -> float:
        """Where what waits for it goes on."""
        return self.top + self.height

    @property
    def path(self) -> str:
        """Its outline, and between two sides a line."""
        outline = rounded((self.left, self.top, self.left + self.width, self.bottom), 12 if self.node.goal else 4)
        if len(self.node.links) < 2:
            return outline
        head = self.bottom - self.foot
        down = f"M{_at(self.middle, head)} V{svg.number(self.bottom)}"
        return f"{outline} M{_at(self.left, head)} h{svg.number(self.width)} {down}"

    def named(self) -> Iterator[Line]:
        """The lines of its name, in the middle of the room they have."""
        room = self.height - (self.foot if len(self.node.links) > 1 else 0)
        first = self.top + (room - PITCH * len(self.lines)) / 2 + SIZE - 1
        for place, words in enumerate(self.lines):
            yield Line(self.middle, first + place * PITCH, words, "middle")


@dataclass(frozen=True, slots=True)
class Laid:
    """The whole map: boxes by their nodes, each line by its ends, and how high it is."""

    boxes: Mapping[int, Box]
    paths: Mapping[Edge, str]
    end: float


INKED: Mapping[str, str | float] = {
    "xmlns": svg.NAMESPACE, "font_family": lettering.FAMILY, "font_size": SIZE,
    "fill": "none", "stroke": "#444444", "stroke_width": 1.3}  # fmt: skip
"""How a map looks that no style reaches."""


def apart(nodes: Sequence[Node]) -> Iterator[list[Node]]:
    """The nodes of each group that hangs together, by themselves."""
    for group in groups(len(nodes), _edges(nodes)):
        place = {old: new for new, old in enumerate(sorted(group))}
        yield [
            replace(nodes[old], after=[place[at] for at in nodes[old].after], either=[place[at] for at in nodes[old].either])
            for old in place
        ]  # fmt: skip


def _edges(nodes: Sequence[Node]) -> list[Edge]:
    every = [(first, then) for then, node in enumerate(nodes) for first in (*node.after, *node.either)]
    return reduced(len(nodes), acyclic(len(nodes), every))


def laid(nodes: Sequence[Node], rows: Rows = TOUCHED) -> Laid:
    """Where everything stands: groups that hang together one below the other."""
    edges = _edges(nodes)
    boxes: dict[int, Box] = {}
    paths: dict[Edge, str] = {}
    top = 2.0
    for group in groups(len(nodes), edges):
        inside = [edge for edge in edges if edge[0] in group]
        layers = layered(group, inside, _MOST)
        top = _group(nodes, layers, inside, top, rows, boxes, paths) + _APART
    return Laid(boxes, paths, max(top - _APART, 0) + 2)


def _group(
    nodes: Sequence[Node],
    layers: Sequence[Sequence[Item]],
    edges: Sequence[Edge],
    top: float,
    rows: Rows,
    boxes: dict[int, Box],
    paths: dict[Edge, str],
) -> float:
    """One group from `top` on; where it ends."""
    passes: dict[Edge, list[tuple[float, float, float]]] = {edge: [] for edge in edges}
    for row in layers:
        made = _row(nodes, row, top, rows.least)
        low = max(box.bottom for box in made.values() if isinstance(box, Box))
        for item, box in made.items():
            if isinstance(box, Box) and item.node is not None:
                boxes[item.node] = box
            elif item.edge is not None and not isinstance(box, Box):
                passes[item.edge].append((box, top, low))
        top = low + rows.between
    for edge in edges:
        paths[edge] = _line(boxes[edge[0]], passes[edge], boxes[edge[1]])
    return top - rows.between


def _row(nodes: Sequence[Node], row: Sequence[Item], top: float, least: float) -> dict[Item, Box | float]:
    """The boxes of a row side by side about the middle; of what passes between them, where."""
    held = sum(item.node is not None for item in row)
    room = WIDTH - 4 - _GAP * (len(row) - 1) - _PASS * (len(row) - held)
    wide = min(_WIDEST, room / held) if held else 0.0
    x = (WIDTH - (wide * held + _PASS * (len(row) - held) + _GAP * (len(row) - 1))) / 2
    made: dict[Item, Box | float] = {}
    for item in row:
        if item.node is None:
            made[item] = x + _PASS / 2
            x += _PASS + _GAP
        else:
            made[item] = _box(nodes[item.node], x, top, wide, least)
            x += wide + _GAP
    return made


def _box(node: Node, left: float, top: float, width: float, least: float) -> Box:
    lines = lettering.wrapped(node.name, width - 2 * _PAD)
    high = 2 * _PAD + PITCH * len(lines) - 2 + (_FOOT if len(node.links) > 1 else 0)
    return Box(node, left, top, width, max(high, least), _FOOT, lines)


def _line(upper: Box, passes: Sequence[tuple[float, float, float]], lower: Box) -> str:
    """From the lower edge of one box, through where it passes rows between, to the upper edge of the other."""
    x, y = upper.middle, upper.bottom
    path = f"M{_at(x, y)}"
    for to_x, top, low in (*passes, (lower.middle, lower.top, lower.top)):
        half = (y + top) / 2
        straight = abs(to_x - x) < 0.5
        path += f" V{svg.number(top)}" if straight else f" C{_at(x, half)} {_at(to_x, half)} {_at(to_x, top)}"
        path += f" V{svg.number(low)}" if low > top else ""
        x, y = to_x, low
    return path


def drawn(nodes: Sequence[Node], title: str, looks: Mapping[str, str | float], rows: Rows = TOUCHED) -> str:
    """The map as SVG, as wide as a phone; `looks` are the attributes of the whole."""
    made = laid(nodes, rows)
    about = {"viewBox": f"0 0 {svg.number(WIDTH)} {svg.number(made.end)}", "role": "group", "aria_label": title}
    return svg.element("svg", *_inside(nodes, made), **about, **looks)


def _inside(nodes: Sequence[Node], made: Laid) -> Iterator[str]:
    """The lines, and the boxes over them."""
    ways = {(first, then) for then, node in enumerate(nodes) for first in node.either}
    solid, broken = (
        " ".join(path for edge, path in made.paths.items() if (edge in ways) == one) for one in (False, True)
    )
    lines = [svg.element("path", d=solid)] if solid else []
    lines += [svg.element("path", d=broken, stroke_dasharray="5 4")] if broken else []
    yield svg.element("g", *lines, fill="none")
    yield from (_drawn(made.boxes[place]) for place in range(len(nodes)))


def _drawn(box: Box) -> str:
    """A box with its name, as one link or with one for each side. Between the lines of a name is a space, for those who hear it."""
    words = [_text(line) for line in box.named()]
    outline = svg.element("path", d=box.path, **({"stroke_width": 2.4} if box.node.goal else {}))
    links = box.node.links
    if len(links) == 1:
        inside = svg.element("a", outline, " ".join(words), href=links[0].href, aria_label=links[0].label)
    else:
        inside = "".join([outline, *words, *_by_side(box)])
    return svg.element("g", inside, **box.node.attributes)


def _by_side(box: Box) -> Iterator[str]:
    """The links of both sides: each fills its half of the lower part."""
    wide = box.width / max(1, len(box.node.links))
    for place, link in enumerate(box.node.links):
        left, top = box.left + place * wide, box.bottom - box.foot
        words = _text(Line(left + wide / 2, top + box.foot / 2 + 4, link.words, "middle"))
        half = svg.element("path", d=svg.rectangle(left + 1, top + 1, wide - 2, box.foot - 2), stroke="none")
        yield svg.element("a", half, words, href=link.href, aria_label=link.label)


def _text(line: Line) -> str:
    at: dict[str, str | float] = {"x": line.x, "y": line.y, "text_anchor": line.anchor}
    return svg.element("text", svg.escaped(line.words), **at, **_INK)


_INK = {"fill": "currentColor", "stroke": "none"}


def _at(x: float, y: float) -> str:
    return f"{svg.number(x)} {svg.number(y)}"
