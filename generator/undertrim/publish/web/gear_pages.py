"""A page for each piece of gear, and what the finder knows of it. Where it goes is worked out on the device (`assets/undertrim/page-gear.js`)."""

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from urllib.parse import quote

from markupsafe import Markup

from undertrim.derive.fit.stock import Gear, Stock
from undertrim.publish.encoding import said
from undertrim.publish.facts import gear_page, whose
from undertrim.publish.pictures.drawings import gear as gear_drawing
from undertrim.publish.pictures.drawings import svg
from undertrim.publish.web import pages
from undertrim.publish.web.content import Body
from undertrim.publish.web.finder import Entry
from undertrim.publish.web.scripts import loaded
from undertrim.publish.web.views import OPENINGS
from undertrim.record.digests import joined
from undertrim.words import message, say

FOLDER = "gear"
SCRIPTS = loaded("page-gear")


def bodies(stock: Stock, titles: Mapping[str, str]) -> dict[str, Body]:
    """The pages by their path in the site; `titles` are what vehicles are called, by address."""
    names = {item.id: item.name for item in stock.items}
    return {f"{FOLDER}/{item.id}": _body(item, titles, names) for item in stock.items}


def _body(item: Gear, titles: Mapping[str, str], names: Mapping[str, str]) -> Body:
    named = sorted(
        {*(place.vehicle for place in item.facts.suits), *(one.vehicle for one in item.tried)} & titles.keys()
    )
    leads = names.get(getattr(item.facts, "lead_set", ""), "")
    key = joined(repr(item), leads, *(f"{vehicle} {titles[vehicle]}" for vehicle in named))
    return Body(item.name, partial(body, item, titles, names), key, scripts=SCRIPTS)


def body(item: Gear, titles: Mapping[str, str], names: Mapping[str, str]) -> str:
    """The body of the page of a piece of gear; `titles` are what vehicles are called, by address, and `names` what gear is, by id."""
    piece = gear_page.piece(item, names)
    drawing = Markup(svg.inline(gear_drawing.drawn(piece.sketch))) if piece.sketch else ""  # noqa: S704 - drawn by us
    suits = [_made_for(vehicle, opening, titles) for vehicle, opening in piece.suits]
    tried = [(*_made_for(vehicle, opening, titles), say(seen)) for vehicle, opening, seen in piece.tried]
    shown = {**said(replace(piece, sketch=None)), "drawing": drawing, "suits": suits, "tried": tried}
    return pages.environment().get_template("gear.html.j2").render(g=shown)


def _made_for(vehicle: str, opening: str, titles: Mapping[str, str]) -> tuple[str, str]:
    """An opening that gear is made for, with the way to it where there is such a vehicle."""
    title = say(message("everywhere/place", vehicle=titles.get(vehicle, vehicle), opening=opening))
    return title, f"../vehicles/{quote(OPENINGS.path(vehicle))}.html#opening-{opening}" if vehicle in titles else ""


def entries(stock: Stock) -> list[Entry]:
    """What can be found of the stock: each piece by its name and the sizes that people say."""
    return [_entry(item) for item in stock.items]


def _entry(item: Gear) -> Entry:
    nominal = str(getattr(item.facts, "nominal", ""))
    kind = say(message(f"gear-kinds/{item.facts.kind}"))
    said = ", ".join(filter(None, (kind, nominal, say(whose.mark(item.whose)))))
    return ["gear", item.name, said, f"{FOLDER}/{item.id}.html", item.id]
