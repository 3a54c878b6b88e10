"""What a site holds besides the handbook in the language of the reader, put together from what was prepared of each vehicle and from the stock."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import partial
from typing import Any

from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.publish import described
from undertrim.publish.build.day import today
from undertrim.publish.build.in_languages import SCHEMA
from undertrim.publish.build.prepared import Prepared
from undertrim.publish.encoding import said
from undertrim.publish.facts import account as facts
from undertrim.publish.facts import meter, shelf
from undertrim.publish.web import (
    calculators,
    finder,
    gear_pages,
    measuring,
    new_car,
    not_kept,
    pages,
    places,
    rule_pages,
)
from undertrim.publish.web.content import Body, Content, Copy
from undertrim.publish.web.views import VIEWS, VISIT, View
from undertrim.record.identity import slug
from undertrim.words import message, say

EVIDENCE = "evidence/people"
"""The page of who says so."""


def content(made: Sequence[Prepared], gear: Stock) -> Content:
    """Everything the site holds besides the handbook."""
    # Long because it is one list: what a site holds, a line each.
    by_make: dict[str, list[Prepared]] = defaultdict(list)
    for item in made:
        by_make[item.summary["make"]].append(item)
    slices, listed = places.slices(_places(made))
    return Content(
        bodies={
            **gear_pages.bodies(gear, {item.address: _title(item) for item in made}),
            "index": _home(by_make),
            EVIDENCE: _evidence(made),
            "calculators": _of_all(calculators.title(), calculators.page(), "assets/undertrim/calculators.js"),
            new_car.PAGE: _of_all(new_car.title(), new_car.page(), new_car.SCRIPT),
            not_kept.PAGE: not_kept.page(),
            measuring.PAGE: _of_all(measuring.title(), measuring.page()),
            **{f"makes/{slug(name)}": _make_page(name, items) for name, items in by_make.items()},
            **{f"vehicles/{view.path(item.address)}": _vehicle_page(item, view) for item in made for view in VIEWS},
        },
        markdown=rule_pages.pages(),
        files={
            **finder.files([item.summary["row"] for item in made]),
            "assets/undertrim/meter-table.js": meter.table_script(),
            **shelf.files(gear, clearances()),
            **finder.more("gear", gear_pages.entries(gear)),
            **listed,
            SCHEMA: described.text(),
        },
        copies={**{name: copy for item in made for name, copy in _copies(item)}, **slices},
    )


def _copies(item: Prepared) -> Iterable[tuple[str, Copy]]:
    """The files beside a vehicle's pages, those of them in the reader's language, and its own on the shelf."""
    make = item.address.split("/")[0]
    for name, kept in (*item.beside, *item.own.items()):
        yield f"vehicles/{make}/{name}", Copy(item.files.digests[kept], partial(item.files.content, kept))
    for view, held in item.with_stock.items():
        name = f"{shelf.FOLDER}/{shelf.own_name(item.address, view)}.js"
        yield name, Copy(item.shelf.digests[held], partial(item.shelf.content, held))


def _places(made: Sequence[Prepared]) -> Mapping[str, Sequence[places.Part]]:
    """The openings of all vehicles by the kind of gear that goes into them."""
    found: dict[str, list[places.Part]] = defaultdict(list)
    for item in made:
        make = item.address.split("/")[0]
        for kind, (digest, content) in item.places().items():
            found[kind].append(places.Part(make, item.summary["make"], digest, content))
    return found


def _title(item: Prepared) -> str:
    return f"{item.summary['title']} {item.summary['years']}"


def _home(by_make: dict[str, list[Prepared]]) -> Body:
    makes: list[Mapping[str, Any]] = [
        {"id": slug(name), "name": name, "count": len(items)} for name, items in sorted(by_make.items())
    ]
    demo = all(item.summary["demo"] for items in by_make.values() for item in items)
    body = pages.home(makes, demo=demo)
    scripts = ("assets/undertrim/home.js",)
    return Body(say(message("finder/title")), lambda: body, body, in_nav=True, scripts=scripts)


def _evidence(made: Sequence[Prepared]) -> Body:
    """Who says so; it changes with every record, so it is none of the frame."""
    found = facts.for_a_page([facts.restored(item.summary["account"]) for item in made], today())
    body = pages.evidence(said(found))
    return Body(say(message("account/title")), lambda: body, body)


def _of_all(title: str, body: str, *scripts: str) -> Body:
    """A page that is the same whatever the collection holds."""
    return Body(title, lambda: body, body, in_nav=True, scripts=scripts)


def _make_page(name: str, items: Sequence[Prepared]) -> Body:
    vehicles: list[Any] = [item.summary for item in sorted(items, key=_by_model)]
    body = pages.make(name, vehicles)
    return Body(name, lambda: body, body)


def _by_model(item: Prepared) -> tuple[str, int, str]:
    return item.summary["model"], item.summary["first_year"], item.address


def _vehicle_page(item: Prepared, view: View) -> Body:
    name = _title(item)
    other = message("vehicle-page/page-title", vehicle=name, page=message(view.title))
    title = name if view is VISIT else say(other)
    return Body(title, partial(item.body, view.name), item.digest(view.name), scripts=view.scripts)
