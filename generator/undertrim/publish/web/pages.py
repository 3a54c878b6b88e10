"""Renders page bodies with our own Jinja templates; everything from a record is escaped."""

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from jinja2 import Environment, FileSystemLoader, StrictUndefined, pass_context
from jinja2.runtime import Context
from markupsafe import Markup

from undertrim import resources
from undertrim.publish import template_words
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import meter, spans, told
from undertrim.publish.pictures import above, order
from undertrim.publish.pictures import openings as opening_pictures
from undertrim.publish.pictures import photos as photo_pictures
from undertrim.publish.pictures import plugs as plug_pictures
from undertrim.publish.pictures import small as pictures
from undertrim.publish.pictures.drawings import measuring, plugs, svg
from undertrim.publish.sparse import sparse
from undertrim.publish.terminal import plan as plan_text
from undertrim.publish.web.downloads import NOTHING, Downloads
from undertrim.publish.web.speaking import Speaking
from undertrim.publish.web.views import HEADS, QUESTIONS, RECORD, VIEWS, View
from undertrim.record.measuring import drawing_of
from undertrim.words import Language, once_per_language, spoken

MOST_ALONE = 24
"""So many openings can each be shown alone with scripts off: `visit.css` has a line for each."""


@once_per_language
def environment() -> Environment:
    """The template environment of the reader's language, autoescape on."""
    # Long because it is one table: what templates may call, a line each.
    loader = FileSystemLoader(resources.inside("publish", "web", "templates"))
    made = Speaking(
        spoken(), loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    made.globals.update(
        say=template_words.say,
        listed=template_words.listed,
        link=template_words.link,
        in_other_words=template_words.in_other_words,
        sides=template_words.sides,
        bodies=template_words.bodies,
        evidence_links=evidence_links,
        record_page=record_page,
        tether_name=plan_text.tether_name,
        fastener_picture=lambda line: Markup(pictures.fastener(line)),  # noqa: S704 - drawn by us, its texts escaped there
        tether_picture=lambda line: Markup(pictures.tether(line)),  # noqa: S704
        picture_symbols=lambda steps: Markup(pictures.symbols(steps)),  # noqa: S704
        wire_picture=lambda colour: Markup(pictures.wire(colour)),  # noqa: S704
        wire_symbols=lambda facts: Markup(pictures.wire_symbols(facts)),  # noqa: S704
        panel_picture=lambda step: Markup(pictures.panel_on_page(step, remove=step["kind"] == "remove")),  # noqa: S704
        plug_picture=lambda facts: Markup(svg.inline(plug_pictures.face(facts, plugs.used))),  # noqa: S704
        plug_picture_whole=lambda facts: Markup(svg.inline(plug_pictures.face(facts))),  # noqa: S704
        opening_pictures=_opening_pictures,
        order_picture=lambda facts: Markup(order.on_page(facts)),  # noqa: S704
        car_here=lambda facts: Markup(above.here(facts)),  # noqa: S704
        car_picture=lambda facts: Markup(above.chooser(facts)),  # noqa: S704
        photo_marks=lambda photo: Markup(photo_pictures.marks(photo)),  # noqa: S704
        drawing_of=drawing_of,
        page_data=page_data,
        told_once=told.Once,
        asked_data=lambda asked: meter.script(sparse(asked)),
        sketches_of=sketches_of,
        choosing=choosing,
        for_targets=for_targets,
        worked_from=worked_from,
        marks_of=marks_of,
        spanned=lambda kinds: said(spans.spanned(kinds)),
        most_alone=MOST_ALONE,
        script_data=meter.script,
        meter_table=meter.meter_table,
    )
    made.filters |= template_words.FILTERS
    return made


def _opening_pictures(drawn: Published) -> Iterator[tuple[str, Markup]]:
    for title, made in opening_pictures.openings(drawn):
        yield title, Markup(svg.inline(made))  # noqa: S704


def vehicle(facts: Published, printed: Downloads = NOTHING, beside: str = "") -> dict[str, str]:
    """The bodies of a vehicle's pages, by the name of the view; they lead to what is printed of it, and `beside` is the way to such files."""
    forms = meter.packed_script({opening["id"]: opening["form"] for opening in facts["openings"]})
    return {view.name: _view(view, facts, printed, beside, forms) for view in VIEWS}


def _view(view: View, facts: Published, printed: Downloads, beside: str, forms: Markup) -> str:
    places = {target["id"]: place for place, target in enumerate(facts["targets"], 1)}
    marks = {target["id"]: target["mark"] for target in facts["targets"]}
    return (
        environment()
        .get_template(f"vehicle-{view.name}.html.j2")
        .render(
            v=facts,
            view=view,
            views=HEADS,
            questions=QUESTIONS.file(facts["id"]),
            printed=printed,
            beside=beside,
            places=places,
            marks=marks,
            forms=forms,
        )
    )


def make(name: str, vehicles: list[Published]) -> str:
    """The body of a make's page."""
    return environment().get_template("make.html.j2").render(name=name, vehicles=vehicles)


def home(makes: list[Published], *, demo: bool) -> str:
    """The body of the home page: the finder and the makes."""
    return environment().get_template("home.html.j2").render(makes=makes, demo=demo)


def evidence(report: Published) -> str:
    """The body of the page that says what the facts rest on."""
    return environment().get_template("evidence.html.j2").render(r=report)


def box() -> str:
    """The box that finds, as it stands in the bar at the top of a page."""
    return environment().get_template("box.html.j2").render(first=False)


@pass_context
def record_page(context: Context) -> str:
    """The link to what stands behind the facts; empty on that page itself."""
    return "" if context["view"] is RECORD else RECORD.file(context["v"]["id"])


@pass_context
def evidence_links(context: Context, ids: Iterable[str]) -> str:
    """Evidence by its ids, each with the way to it."""
    return _evidence_links(tuple(ids), record_page(context), tuple(context["v"]["whose"]["evidence"]), spoken())


@lru_cache(maxsize=1024)
def _evidence_links(ids: tuple[str, ...], page: str, ours: tuple[str, ...], _: Language) -> str:
    """A record has few looks at a car, and most of its steps rest on one and the same."""
    return template_words.evidence_links(ids, page, ours)


def sketches_of(asked: Published) -> dict[str, Markup]:
    """The drawings that show how what is asked for is measured, by name."""
    names = dict.fromkeys(field["drawing"] for one in asked["questions"] for field in one["fields"])
    return {name: Markup(svg.inline(measuring.drawing(name))) for name in names if name}  # noqa: S704 - drawn by us


def worked_from(facts: Published, area: str) -> list[str]:
    """The openings whose steps come into an area, by target; a sign that names none where no step does."""
    found = {target for step in facts["steps"] if step["area"] == area for target in step["targets"]}
    return sorted(found) or ["-"]


@pass_context
def for_targets(context: Context, ids: Iterable[str]) -> str:
    """The classes of what belongs to targets, by their places from 1: `visit.css` shows those of one alone."""
    places = context["places"]
    return "".join([f" ut-for-{places[name]}" for name in ids])


@pass_context
def marks_of(context: Context, ids: Sequence[str]) -> str:
    """The marks of targets, as they are listed."""
    return _marks(tuple(map(context["marks"].__getitem__, ids)), spoken())


@lru_cache(maxsize=1024)
def _marks(marks: tuple[str, ...], _: Language) -> str:
    return template_words.listed(marks)


_STEP_KEYS = ("id", "section", "untimed", "tools", "materials", "turns")
_LINE_KEYS = ("tool", "either", "fate", "buy", "clauses")


def page_data(facts: Published) -> Markup:
    """What the page's script needs, packed, as JSON that cannot close its script element; a step or line has no key for what is 0 or empty."""
    shape = above.shape(facts["from_above"])
    data = {
        "sections": {section["id"]: section["title"] for section in facts["sections"]},
        "places": above.places(facts["steps"], shape),
        "steps": list(map(_counted, facts["steps"])),
        "plans": facts["plans"],
        "instead": dict(_instead(facts)),
    }
    return meter.packed_script(data)


def _counted(step: Published) -> Published:
    found = {key: step[key] for key in _STEP_KEYS if step[key]}
    if step["minutes"] is not None:
        found["minutes"] = step["minutes"]
    if at := [{"place": seat.key, **({"clauses": seat.clauses} if seat.clauses else {})} for seat in above.seats(step)]:
        found["at"] = at
    if step["wait"]:
        found["wait"] = step["wait"]["seconds"]
    return {**found, "lines": list(map(_line, step["fasteners"]))} if step["fasteners"] else found


def _line(line: Published) -> Published:
    counts = [{key: value for key, value in count.items() if value} for count in line["counts"]]
    return {key: value for key, value in {**{key: line[key] for key in _LINE_KEYS}, "counts": counts}.items() if value}


def _instead(facts: Published) -> Iterator[tuple[str, Published]]:
    """The tools in whose place others will do, with those."""
    for kind in facts["totals"]:
        yield from ((tool["name"], tool["instead"]) for tool in kind["totals"]["tools"] if tool["instead"])


_TARGET_KEYS = ("id", "opening", "side", "name", "mark", "clauses")


def choosing(facts: Published) -> Markup:
    """What the scripts of all of a vehicle's pages know of what can be chosen, in the same form."""
    data = {
        "address": facts["address"],
        "targets": [{key: target[key] for key in _TARGET_KEYS} for target in facts["targets"]],
        "variants": {one["id"]: {each["id"]: each["label"] for each in one["choices"]} for one in facts["variants"]},
        "words": facts["visit_words"],
    }
    return meter.script(data)
