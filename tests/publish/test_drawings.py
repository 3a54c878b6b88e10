"""Drawings: well-formed, escaped, standing alone, and true in the counts and shapes they claim."""

import math
import re
from collections import Counter

import pytest

from svg_reading import SVG, parsed
from undertrim.publish.pictures import small as pictures
from undertrim.publish.pictures.drawings import clips, heads, marks, svg, wires
from undertrim.publish.pictures.drawings.panels import Mark, Panel
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.resources import table

NASTY = """<script>alert("x")</script> & 'quoted' ]]> \x00\x1b"""
PRINTED = NASTY.replace("\x00", "").replace("\x1b", "")  # XML 1.0, 2.2: control characters have no place

EVERY_MARK = Mark("screw", "corners", 4), Mark("clip", "top", 5), Mark("hook", "left", 2)
PANEL = Panel(EVERY_MARK, {"top": NASTY, "left": NASTY}, {"clip": NASTY})
DRAWN = {
    **{f"head {family}": heads.head(family, NASTY) for family in heads.families()},
    **{f"clip {kind}": clips.clip(kind, NASTY) for kind in clips.kinds()},
    **{f"mark {symbol}": marks.sample(symbol, NASTY) for symbol in marks.symbols()},
    "wire": wires.swatch("#ffffff", ["#ff0000", "#000000"], NASTY),
    "panel": PANEL.picture(NASTY, "20em"),
}


def paths(text: str) -> list[str]:
    return [path.attrib["d"] for path in parsed(text).iter(f"{SVG}path")]


@pytest.mark.parametrize("name", DRAWN)
def test_the_title_is_the_accessible_name_and_cannot_break_out(name: str) -> None:
    root = parsed(DRAWN[name])
    assert root.tag == f"{SVG}svg"
    assert root.attrib["role"] == "img"
    assert root[0].tag == f"{SVG}title"
    assert root[0].text == PRINTED
    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= {"svg", "title", "g", "path", "text"}


@pytest.mark.parametrize("name", DRAWN)
def test_a_drawing_stands_alone(name: str) -> None:
    attributes = {key for element in parsed(DRAWN[name]).iter() for key in element.attrib}
    assert not {key for key in attributes if key in ("id", "class", "style") or "href" in key or key[:2] == "on"}
    assert "url(" not in DRAWN[name]
    assert "var(" not in DRAWN[name]


@pytest.mark.parametrize("name", [name for name in DRAWN if name != "wire"])
def test_only_wires_carry_colour(name: str) -> None:
    elements = list(parsed(DRAWN[name]).iter())
    used = {element.get(key) for element in elements for key in ("fill", "stroke")}
    assert used <= {"none", "currentColor", None}
    assert "currentColor" in used


def test_no_two_drawings_look_alike() -> None:
    for kind in ("head", "clip", "mark"):
        bodies = [text.split("</title>")[1] for name, text in DRAWN.items() if name.startswith(kind)]
        assert len(set(bodies)) == len(bodies) > 5


def test_attribute_values_are_escaped() -> None:
    made = svg.element("path", d="""a"<b>&'\x01""")
    assert parsed(made).attrib["d"] == """a"<b>&'"""


@pytest.mark.parametrize(
    ("size", "width", "height"),
    [("2em", "2em", "1.25em"), ("160px", "160px", "100px"), ("40.5mm",) * 2 + ("25.31mm",)],
)
def test_height_follows_width(size: str, width: str, height: str) -> None:
    root = parsed(Panel(()).picture("door", size))
    assert (root.attrib["width"], root.attrib["height"]) == (width, height)


@pytest.mark.parametrize("size", ["2", "em", "-2em", "2em;", "2em\n", "50%", "auto"])
def test_another_size_is_refused(size: str) -> None:
    with pytest.raises(ValueError, match="is no size"):
        heads.head("hex", "10 mm", size)


def test_what_is_not_drawn_is_named_with_what_is() -> None:
    with pytest.raises(ValueError, match="no drawing of a 'square' head: known are external-hexalobular, hand"):
        heads.head("square", "x")
    with pytest.raises(ValueError, match="no drawing of a 'glue' clip: known are bond, bond-butyl, bond-foam"):
        clips.clip("glue", "x")
    with pytest.raises(ValueError, match="no drawing of a 'dowel' mark: known are bolt, bond, clip"):
        marks.mark("dowel", 0, 0, 10)


def test_what_the_tables_name_is_drawn() -> None:
    rows = table("fasteners").values()
    assert {row["mark"] for row in rows if "mark" in row} <= {*marks.symbols()}
    pictures = {row["drawing"] for row in (*rows, *table("tethers")["kind"].values()) if "drawing" in row}
    assert pictures | {name for row in rows for name in row.get("sorts", {}).values()} <= {*clips.kinds()}


@pytest.mark.parametrize("kind", [kind for kind, row in table("fasteners").items() if "mark" in row])
def test_a_kind_of_fastener_has_the_mark_that_its_row_names(kind: str) -> None:
    line = {"kind": kind, "fate": "out", "at": {"top": 1}}
    drawn = pictures.panel({"title": "Panel", "side": "", "on_side": "", "fasteners": [line]})
    assert drawn is not None
    assert [mark.symbol for mark in drawn.marks] == [table("fasteners")[kind]["mark"]]
    assert drawn.key == {table("fasteners")[kind]["mark"]: table("fasteners")[kind]["plural"]}


def test_a_kind_nobody_has_drawn_gets_a_plain_mark() -> None:
    """A new kind of fastener or drive is a line in a table; it must not stop page or sheet before it has a drawing."""
    for kind, sort in (("dowel", "oak"), ("scrivet", "magnet-pin"), ("clip", "new")):
        line: dict[str, object] = {
            "kind": kind,
            "sort": sort,
            "text": "1",
            "head": None,
            "fate": "out",
            "at": {"top": 1},
        }
        assert "<svg" in pictures.fastener(line)
        drawn = pictures.panel({"title": "Panel", "side": "", "on_side": "", "fasteners": [line]})
        assert drawn is not None
        assert {mark.symbol for mark in drawn.marks} == {"other" if kind == "dowel" else kind}
        assert Pictures().fastener(line)
    head = {"family": "star-of-nine", "label": "N9"}
    line = {"kind": "screw", "sort": "N9", "text": "1", "head": head, "fate": "out", "at": {}}
    assert "<svg" in pictures.fastener(line)
    assert Pictures().fastener(line)


# Fastener heads


def arc_ends(path: str) -> list[tuple[float, float]]:
    """Distance from the centre and angle of every point of an outline made of arcs."""
    numbers = re.findall(r"(?:M|A\S+ \S+ 0 0 [01] )(-?[\d.]+) (-?[\d.]+)", path)
    return [(math.hypot(float(x), float(y)), math.degrees(math.atan2(float(y), float(x)))) for x, y in numbers]


def test_hexalobular_outline_has_six_tips_six_hollows_and_sixfold_symmetry() -> None:
    path = heads.lobes(1000, 0, 0)
    assert Counter(re.findall(r"A\S+ \S+ 0 0 ([01]) ", path)) == {"1": 6, "0": 6}
    ends = arc_ends(path)
    assert len(ends) == 13
    assert ends[0] == pytest.approx(ends[-1])
    assert [radius for radius, _ in ends] == pytest.approx([ends[0][0]] * 13, abs=0.02)
    turned = sorted((angle + 60) % 360 for _, angle in ends[:12])
    assert turned == pytest.approx(sorted(angle % 360 for _, angle in ends[:12]), abs=0.01)


def test_hexalobular_outline_keeps_a_and_b() -> None:
    """ISO 10664, size 30: A 5.60, B 4.05 mm. An arc reaches its chord's middle plus or minus its sagitta."""
    path = heads.lobes(5600, 0, 0)
    ends = arc_ends(path)
    radii = [(float(r), sweep) for r, sweep in re.findall(r"A(\S+) \S+ 0 0 ([01])", path)]
    half_angle = math.radians(ends[1][1] - ends[0][1]) / 2
    for (radius, sweep), halves in ((radii[0], half_angle), (radii[1], math.radians(30) - half_angle)):
        chord = ends[0][0] * math.sin(halves)
        sagitta = radius - math.sqrt(radius**2 - chord**2)
        reach = ends[0][0] * math.cos(halves) + (sagitta if sweep == "1" else -sagitta)
        assert 2 * reach == pytest.approx(5600 if sweep == "1" else 4050, abs=0.5)


def test_arcs_of_the_outline_meet_without_a_corner() -> None:
    """Circles touch if centre distance = sum of radii: A/2 - tip and B/2 + hollow, 30 degrees apart."""
    path = heads.lobes(5600, 0, 0)
    tip, hollow = (float(re.findall(rf"A(\S+) \S+ 0 0 {sweep}", path)[0]) for sweep in (1, 0))
    out, far = 2800 - tip, 2025 + hollow
    distance = math.sqrt(out**2 + far**2 - 2 * out * far * math.cos(math.radians(30)))
    assert distance == pytest.approx(tip + hollow, abs=0.05)


@pytest.mark.parametrize(("family", "flats"), [("hex", 14), ("hex-key", 10.5)])
def test_hexagon_is_regular(family: str, flats: float) -> None:
    (hexagon,) = [path for path in paths(heads.head(family, "x")) if "A" not in path]
    points = [complex(float(x) - 12, float(y) - 12) for x, y in re.findall(r"([\d.]+) ([\d.]+)", hexagon)]
    assert len(points) == 6
    assert [abs(point) for point in points] == pytest.approx([flats / math.sqrt(3)] * 6, abs=0.01)
    sides = [abs(a - b) for a, b in zip(points, points[1:] + points[:1], strict=True)]
    assert sides == pytest.approx([flats / math.sqrt(3)] * 6, abs=0.02)


def test_pozidriv_has_four_more_lines_than_phillips() -> None:
    assert len(paths(heads.head("pozidriv", "x"))) == len(paths(heads.head("phillips", "x"))) + 4


def test_the_pin_is_the_only_difference() -> None:
    plain, pinned = paths(heads.head("hexalobular", "x")), paths(heads.head("hexalobular-pin", "x"))
    assert pinned == [plain[0], plain[1] + " " + svg.circle(12, 12, 2.3)]


# Wires


def bands(drawn: str) -> list[str]:
    """The colour of the wire, and those of its bands from the bare end on."""
    body, *tracers = [p for p in parsed(drawn).iter(f"{SVG}path") if p.get("fill", "none") != "none"]
    placed = [
        (float(band.split()[0]), p.attrib["fill"]) for p in tracers for band in p.attrib["d"].split("M") if band.strip()
    ]
    return [body.attrib["fill"], *(colour for _, colour in sorted(placed))]


def test_base_and_tracers_stand_in_order() -> None:
    one = bands(wires.swatch("#ff0000", ["#ffffff"], "x"))
    other = bands(wires.swatch("#ffffff", ["#ff0000"], "x"))
    assert one == ["#ff0000"] + ["#ffffff"] * (len(one) - 1)
    assert other == ["#ffffff"] + ["#ff0000"] * (len(one) - 1)
    for pair in (["#000000", "#ff0000"], ["#ff0000", "#000000"]):
        two = bands(wires.swatch("#ffffff", pair, "x"))
        assert two[1:] == pair * (len(two) // 2)
    assert bands(wires.swatch("#ff0000", [], "x")) == ["#ff0000"]


@pytest.mark.parametrize("count", range(1, 9))
def test_every_tracer_is_inside_the_wire(count: int) -> None:
    drawn = wires.swatch("#ffffff", [f"#00000{place}" for place in range(count)], "x")
    body, *tracers = [p.attrib["d"] for p in parsed(drawn).iter(f"{SVG}path") if p.get("fill", "none") != "none"]
    assert body == "M8 3 h39 v10 h-39 Z"
    assert len(tracers) >= count
    for tracer in tracers:
        points = [(float(x), float(y)) for x, y in re.findall(r"([\d.]+) ([\d.]+)", tracer)]
        assert points
        assert len(points) % 4 == 0
        assert all(8 <= x <= 47 and 3 <= y <= 13 for x, y in points)


def test_bands_have_an_edge_that_shows_on_their_base() -> None:
    assert 'stroke="#ffffff"' in wires.swatch("#1a1a1a", ["#14296b"], "x")
    assert 'stroke="#000000"' in wires.swatch("#ffffff", ["#f7d417"], "x")


@pytest.mark.parametrize("colour", ["red", "#fff", '#ffffff"', "", "url(#a)"])
def test_only_hex_colours_are_drawn(colour: str) -> None:
    with pytest.raises(ValueError, match="is no colour"):
        wires.swatch(colour, [], "x")
    with pytest.raises(ValueError, match="is no colour"):
        wires.swatch("#ffffff", [colour], "x")


def test_nine_tracers_are_refused() -> None:
    with pytest.raises(ValueError, match="9 tracers cannot be drawn"):
        wires.swatch("#ffffff", ["#000000"] * 9, "x")
