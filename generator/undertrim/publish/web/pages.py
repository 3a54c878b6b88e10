"""Renders page bodies with our own Jinja templates; everything from a record is escaped."""

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from undertrim import resources
from undertrim.publish import template_words
from undertrim.publish.encoding import Published, compact
from undertrim.publish.facts import meter
from undertrim.publish.pictures import openings as opening_pictures
from undertrim.publish.pictures import photos as photo_pictures
from undertrim.publish.pictures import plugs as plug_pictures
from undertrim.publish.pictures import small as pictures
from undertrim.publish.terminal import plan as plan_text
from undertrim.publish.web.speaking import Speaking
from undertrim.words import once_per_language, spoken


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
        sides=template_words.sides,
        bodies=template_words.bodies,
        evidence_links=template_words.evidence_links,
        tether_name=plan_text.tether_name,
        fastener_picture=lambda line: Markup(pictures.fastener(line)),  # noqa: S704 - drawn by us, its texts escaped there
        tether_picture=lambda line: Markup(pictures.tether(line)),  # noqa: S704
        wire_picture=lambda colour: Markup(pictures.wire(colour)),  # noqa: S704
        wire_symbols=lambda facts: Markup(pictures.wire_symbols(facts)),  # noqa: S704
        panel_words=pictures.panel_words,
        panel_picture=lambda step: Markup(pictures.panel(step)),  # noqa: S704
        plug_picture=lambda facts: Markup(plug_pictures.face(facts)),  # noqa: S704
        opening_pictures=lambda drawn: [(title, Markup(svg)) for title, svg in opening_pictures.openings(drawn)],  # noqa: S704
        photo_marks=lambda photo: Markup(photo_pictures.marks(photo)),  # noqa: S704
        page_data=page_data,
        script_data=meter.script,
        meter_table=meter.meter_table,
        fit_forms=fit_forms,
    )
    made.filters["own"] = template_words.own
    return made


def vehicle(facts: Published) -> str:
    """The body of a vehicle's page."""
    return environment().get_template("vehicle.html.j2").render(v=facts)


def make(name: str, vehicles: list[Published]) -> str:
    """The body of a make's page."""
    return environment().get_template("make.html.j2").render(name=name, vehicles=vehicles)


def home(makes: list[Published], *, demo: bool) -> str:
    """The body of the home page: the finder and the makes."""
    return environment().get_template("home.html.j2").render(makes=makes, demo=demo)


def fit_forms(facts: Published) -> Published:
    """What the forms of a page reckon with, by opening; one without a form has none."""
    return {opening["id"]: opening["form"] for opening in facts["openings"] if opening["form"]}


_STEP_KEYS = ("id", "section", "minutes", "untimed", "wait", "tools", "materials", "turns")


def page_data(facts: Published) -> Markup:
    """What the page's script needs, as JSON that cannot close its script element."""
    steps = [
        {**{key: step[key] for key in _STEP_KEYS}, "lines": [_line(line) for line in step["fasteners"]]}
        for step in facts["steps"]
    ]
    data = {
        "address": facts["address"],
        "sections": {section["id"]: section["title"] for section in facts["sections"]},
        "steps": steps,
        "plans": facts["plans"],
        "instead": {tool["name"]: tool["instead"] for tool in facts["totals"]["tools"] if tool["instead"]},
    }
    text = compact(data)
    return Markup(text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026"))  # noqa: S704


def _line(line: Published) -> Published:
    return {key: line[key] for key in ("tool", "either", "fate", "counts", "buy", "clauses")}
