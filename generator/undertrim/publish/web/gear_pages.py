"""A page for each piece of gear, and what the finder knows of it. Where it goes is worked out on the device (`assets/undertrim/page-gear.js`)."""

from collections.abc import Mapping
from functools import partial

from undertrim.derive.fit.stock import Gear, Stock
from undertrim.publish.web import pages
from undertrim.publish.web.content import Body
from undertrim.publish.web.finder import Entry
from undertrim.publish.web.scripts import loaded
from undertrim.record.digests import joined
from undertrim.words import message, say

FOLDER = "gear"
SCRIPTS = loaded("page-gear")


def bodies(stock: Stock, titles: Mapping[str, str]) -> dict[str, Body]:
    """The pages by their path in the site; `titles` are what vehicles are called, by address."""
    names = {item.id: item.name for item in stock.items}
    return {f"{FOLDER}/{item.id}": _body(item, titles, names) for item in stock.items}


def _body(item: Gear, titles: Mapping[str, str], names: Mapping[str, str]) -> Body:
    named = sorted({place.vehicle for place in item.facts.suits} & titles.keys())
    leads = names.get(getattr(item.facts, "lead_set", ""), "")
    key = joined(repr(item), leads, *(f"{vehicle} {titles[vehicle]}" for vehicle in named))
    return Body(item.name, partial(pages.gear, item, titles, names), key, scripts=SCRIPTS)


def entries(stock: Stock) -> list[Entry]:
    """What can be found of the stock: each piece by its name and the sizes that people say."""
    return [_entry(item) for item in stock.items]


def _entry(item: Gear) -> Entry:
    nominal = str(getattr(item.facts, "nominal", ""))
    kind = say(message(f"gear-kinds/{item.facts.kind}"))
    said = ", ".join(filter(None, (kind, nominal)))
    return ["gear", item.name, said, f"{FOLDER}/{item.id}.html", item.id]
