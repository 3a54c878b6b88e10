"""Draws the car from above from a vehicle's facts: on its page as a chooser of openings, and on paper."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

from undertrim.publish.encoding import Published, compact
from undertrim.publish.pictures.drawings import lettering, svg
from undertrim.publish.pictures.drawings.above import CHIP_LETTERS, MIDDLE, TOP, WIDTH, Chip, Job, Legend, Scene, Seat
from undertrim.publish.pictures.drawings.car import Shape, areas_path
from undertrim.publish.pictures.drawings.car_lines import lines, outline, wheel
from undertrim.words import Value, message, say

Clauses = Mapping[str, Sequence[str]]
NO_CAR: Mapping[str, str] = {}
"""A car of which nothing is known."""


def chooser(facts: Published) -> str:
    """The picture on a vehicle's page. Each mark is a link to its opening alone, which scripts make a switch of; the list beside it says the same to everybody else."""
    scene, from_above = _scene(facts, facts["targets"]), facts["from_above"]
    legend = Legend(tuple(_legend(facts, scene)), scene.end)
    words, samples, end = legend.lines()
    area = svg.element("g", *_worked(facts, scene.shape), **{"class": "ut-worked"})
    drawn = [
        svg.element("g", area, _car(scene.shape, from_above["wheels"]), transform=_place()),
        *(_sign(name, path, samples.pop(name, "")) for name, path in scene.signs().items()),
        *(_sample(name, path) for name, path in samples.items()),
        svg.element("g", *(svg.text(line.x, line.y, line.words) for line in words), **{"class": "ut-car-words"}),
        _front(**{"class": "ut-car-words"}),
        *(_chip(chip) for chip in scene.chips),
    ]
    about = {"viewBox": f"0 0 {WIDTH} {svg.number(end)}", "aria_hidden": "true", "focusable": "false"}
    return svg.element("svg", *drawn, **about, **{"class": "ut-car"})


_INK: Mapping[str, Mapping[str, str | float]] = {
    "outline": {"stroke_width": 2.2},
    "worked": {"fill": "#dcdcdc", "stroke": "none"},
    "seat": {"fill": "#8c8c8c", "stroke": "none"},
    "chip": {"fill": "#fff", "stroke_width": 1.5},
    "fires": {"fill": "#000", "stroke": "#fff"},
    "unlooked": {"fill": "#fff", "stroke_dasharray": "2 1.6"},
    "battery": {"fill": "#fff", "stroke_width": 1.3},
    "voltage": {"fill": "#fff", "stroke_width": 1.3},
}
"""What a page's style says stands in the picture on paper, in greys that print."""


_LETTERS: Mapping[str, str | float] = {"fill": "#000", "stroke": "none", "font_size": lettering.SIZE}
_MARKED: Mapping[str, str | float] = {
    **_LETTERS,
    "font_size": CHIP_LETTERS,
    "font_weight": 600,
    "text_anchor": "middle",
}
_DRAWN: Mapping[str, str | float] = {"fill": "none", "stroke": "#000", "stroke_linejoin": "round", "font_family": lettering.FAMILY}  # fmt: skip


def on_paper(title: str, facts: Published, car: Mapping[str, str]) -> str:
    """The picture by itself, for the jobs and steps that the facts have, in a car as far as it is known."""
    scene = _scene(facts, facts["targets"], car)
    words, samples, end = Legend(tuple(_legend(facts, scene)), scene.end).lines()
    chips = [svg.element("path", d=chip.path, **_INK["chip"]) for chip in scene.chips]
    drawn = svg.element(
        "g",
        svg.element("g", *_inked(facts, scene, car), transform=_place()),
        *(svg.element("path", d=path, **_INK[name]) for name, path in samples.items()),
        _front(**_LETTERS),
        svg.element("g", *(svg.text(line.x, line.y, line.words) for line in words), **_LETTERS),
        *chips,
        svg.element("g", *(chip.lettered(chip.job.mark) for chip in scene.chips), **_MARKED),
        **_DRAWN,
    )
    return svg.drawing(title, (WIDTH, math.ceil(end)), f"{WIDTH}px", svg.description(title), drawn)


def _inked(facts: Published, scene: Scene, car: Mapping[str, str]) -> Iterator[str]:
    """The car itself: what is worked at, its lines, and the signs."""
    for _, path, _ in _places_of(facts, scene.shape, car):
        yield svg.element("path", d=path, **_INK["worked"])
    for chip in scene.chips:
        yield svg.element("path", d=areas_path(chip.boxes), **_INK["seat"])
    yield svg.element("path", d=outline(scene.shape), **_INK["outline"])
    yield svg.element("path", d=lines(scene.shape))
    for one in facts["from_above"]["wheels"]:
        if _holds(one, car):
            yield svg.element("path", d=wheel(scene.shape, one["name"]))
    for name, path in scene.signs().items():
        yield svg.element("path", d=path, **_INK[name])


def _holds(one: Published, car: Mapping[str, str]) -> bool:
    return all(name not in car or car[name] in choices for name, choices in one["clauses"].items())


def here(facts: Published) -> str:
    """The car alone, small, as a script copies it for a step; what is lit in it stands last."""
    drawn = shape(facts["from_above"])
    at = drawn.stations
    half, tall = at.half + 12, at.length + (13 if at.spare else 4)
    used = svg.element("use", href="#ut-car"), svg.element("use", href="", **{"class": "ut-lit"})
    box = f"{svg.number(-half)} -2 {svg.number(2 * half)} {svg.number(tall)}"
    return svg.element("svg", *used, viewBox=box, role="img", **{"class": "ut-here"})


def places(steps: Iterable[Published], shape: Shape) -> dict[str, str]:
    """What a step's place is called, by the id of its area in the picture without its beginning."""
    return {seat.key: place_words(seat) for step in steps for seat in seats(step) if shape.boxes(seat.area, seat.side)}


def place_words(seat: Seat) -> str:
    """An area with its side."""
    area = message(f"areas/{seat.area}")
    return say(message("drawings/area-at", area=area, side=message(f"sides/{seat.side}")) if seat.side else area)


def seats(step: Published) -> Iterator[Seat]:
    """Where a step is done; in cars of different drive sides at different ones."""
    if not step["area"]:
        return
    if step["side"] or not step["place"]:
        yield Seat(step["area"], step["side"], {})
        return
    yield from (Seat(step["area"], place["side"], place["clauses"]) for place in step["place"])


def shape(from_above: Published) -> Shape:
    """The shape that is drawn: the first of several bodies."""
    bodies = from_above["bodies"]
    body = Shape(bodies[0]["name"] if bodies else "", four_doors=from_above["doors"] == "four")
    return body if body.four_doors or body.stations.usual_doors == "two" else Shape(body.body, four_doors=True)


def _scene(facts: Published, targets: Sequence[Published], car: Mapping[str, str] = NO_CAR) -> Scene:
    from_above = facts["from_above"]
    seated = {one["target"]: one["seats"] for one in from_above["jobs"]}
    jobs = [
        Job(one["id"], one["mark"], _seat(seat))
        for one in targets
        for seat in seated.get(one["id"], ())
        if _holds(seat, car)
    ]
    return Scene(
        shape(from_above),
        jobs,
        [_seat(one) for one in from_above["batteries"] if _holds(one, car)],
        from_above["fires"],
        from_above["unlooked"],
        from_above["high_voltage"],
    )


def _seat(seated: Published) -> Seat:
    return Seat(seated["area"], seated["side"], seated["clauses"])


def _car(drawn: Shape, wheels: Sequence[Published]) -> str:
    """The car, to be used where a step's place is shown; the wheel at each side that some of the cars have it."""
    rims = (svg.element("path", d=wheel(drawn, one["name"]), **_only(one["clauses"])) for one in wheels)
    return svg.element(
        "g",
        svg.element("path", d=outline(drawn), **{"class": "ut-car-body"}),
        svg.element("path", d=lines(drawn), **{"class": "ut-car-lines"}),
        svg.element("g", *rims, **{"class": "ut-wheels"}),
        id="ut-car",
    )


def _worked(facts: Published, drawn: Shape) -> Iterator[str]:
    """Every area in which some visit works, with the visits."""
    for key, path, targets in _places_of(facts, drawn, {}):
        about = {"id": f"ut-at-{key}", "data_openings": " ".join(targets), "class": "ut-at"}
        yield svg.element("path", d=path, **about)


def _places_of(facts: Published, drawn: Shape, car: Mapping[str, str]) -> Iterator[tuple[str, str, Iterable[str]]]:
    """The areas in which steps are done in a car: by what name, as path text, and for which targets."""
    found: dict[str, tuple[Seat, dict[str, None]]] = {}
    for step in facts["steps"]:
        for seat in seats(step):
            if _holds({"clauses": seat.clauses}, car):
                found.setdefault(seat.key, (seat, {}))[1].update(dict.fromkeys(step["targets"]))
    for key, (seat, targets) in found.items():
        if boxes := drawn.boxes(seat.area, seat.side):
            yield key, areas_path(boxes), targets


def _chip(chip: Chip) -> str:
    """A mark with its place: touched, it chooses; the text is told apart by what is around it, which is filled where it is chosen."""
    inside = (
        svg.element("path", d=areas_path(chip.boxes), transform=_place(), **{"class": "ut-seat"}),
        svg.element("path", d=chip.path),
        chip.lettered(chip.job.mark),
    )
    target, only = chip.job.target, _only(chip.job.seat.clauses)
    return svg.element("a", *inside, data_pick=target, tabindex="-1", href=f"#only-{target}", **only)


def _sign(name: str, path: str, sample: str) -> str:
    """All signs of a sort as one path: those on the car, and the one before its words."""
    moved = svg.element("path", d=path, transform=_place())
    whole = svg.element("path", d=sample) if sample else ""
    return svg.element("g", moved, whole, **{"class": f"ut-sign-{name}"})


def _sample(name: str, path: str) -> str:
    return svg.element("path", d=path, **{"class": f"ut-sample-{name}"})


def _front(**looks: str | float) -> str:
    """Which way is forward."""
    words = say(message("drawings/front"))
    x, y = MIDDLE - lettering.width(words) / 2 - 8, TOP - 8
    arrow = svg.element("path", d=f"M{svg.number(x)} {svg.number(y + 4)} v-11 m-4 4 l4 -4 l4 4")
    return arrow + svg.element("g", svg.text(MIDDLE, y + 3, words, "middle"), **looks)


def _legend(facts: Published, scene: Scene) -> Iterator[tuple[str, str]]:
    """What the signs mean, and what is not drawn."""
    signs = scene.signs()
    for name in ("fires", "unlooked", "battery", "voltage"):
        if name in signs:
            yield name, say(message(f"drawings/sign-{name}"))
    yield "worked", say(message("drawings/sign-worked"))
    yield from (("", words) for words in map(say, _honest(facts)))


def _honest(facts: Published) -> Iterator[Value]:
    from_above = facts["from_above"]
    body = from_above["bodies"][0]["name"] if from_above["bodies"] else ""
    yield message("drawings/sketch-of", body=message(f"body/{body}")) if body else message("drawings/sketch")
    if not from_above["battery_known"]:
        yield message("drawings/battery-nowhere")
    placed = {one["target"] for one in from_above["jobs"] if one["seats"]}
    if any(target["id"] not in placed for target in facts["targets"]):
        yield message("drawings/jobs-nowhere")


def _only(clauses: Clauses) -> dict[str, str]:
    """The cars for which it is there, for the page's scripts."""
    return {"data_clauses": compact(clauses)} if clauses else {}


def _place() -> str:
    return f"translate({svg.number(MIDDLE)} {svg.number(TOP)})"
