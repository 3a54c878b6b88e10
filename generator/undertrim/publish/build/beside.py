"""The files that stand beside a vehicle's page: its data, its sheets, and the paper templates of its openings."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from undertrim.derive.procedure.closed import closed_in
from undertrim.publish import sparse
from undertrim.publish.build.failures import making
from undertrim.publish.encoding import Published, compact
from undertrim.publish.facts import claimable as facts
from undertrim.publish.printed import paper, pdf
from undertrim.publish.printed.sheet import Paper
from undertrim.publish.web import finder, inside
from undertrim.publish.web.downloads import Downloads, Link
from undertrim.publish.web.views import VISIT, WIRING, View
from undertrim.record.model import VehicleRecord
from undertrim.words import message, say, spoken

PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}

Templates = Mapping[str, paper.Sheets]
"""The sheets of each opening that has a template, by its id, in the order they are printed."""


@dataclass(frozen=True, slots=True)
class Printing:
    """What is to be printed of a vehicle: its templates are laid out already, by paper, for its page says where each of them begins."""

    vehicle: str
    templates: Mapping[str, Templates]

    @property
    def downloads(self) -> Downloads:
        """What the page leads to."""
        found: dict[str, tuple[Link, ...]] = {}
        for name, laid in self.templates.items():
            for opening, page in _first_pages(laid):
                link = Link(f"{_file(self.vehicle, '-templates', name)}#page={page}", name)
                found[opening] = (*found.get(opening, ()), link)
        return Downloads(self._sheets(""), self._sheets(f"#nameddest={pdf.WIRING}"), found, spoken().tag)

    def _sheets(self, place: str) -> tuple[Link, ...]:
        """The sheet in each paper, opened at a place of it. RFC 8118, section 3: `nameddest`; what does not know it opens the first page."""
        return tuple(Link(f"{_file(self.vehicle, '', name)}{place}", name) for name in self.templates)


def data(made: Published) -> tuple[str, bytes]:
    """The facts as JSON, with the name of their file. A private note is for people and stays on the pages."""
    return f"{made['id']}.json", compact(sparse.of_vehicle({**made, "whose": {**made["whose"], "note": ""}})).encode()


def found(made: Published) -> tuple[str, bytes]:
    """What the finder knows of what is in the car, with the name of its file."""
    return f"{made['id']}.find.js", finder.beside(list(inside.entries(made))).encode()


def claimable(record: VehicleRecord, made: Published) -> tuple[str, bytes]:
    """Every fact of the record at its address, with the name of the file."""
    return facts.file_name(made["id"]), facts.script(record, made["address"]).encode()


def printing(record: VehicleRecord, made: Published, papers: Sequence[str]) -> Printing:
    """What is to be printed of a vehicle in each of the papers."""
    return Printing(made["id"], {name: dict(_templates(record, made, name)) for name in papers})


def sheets(wanted: Printing, made: Published, site_url: str, day: date) -> Iterator[tuple[str, bytes]]:
    """Everything to print, with the names of the files; `day` is the day of printing."""
    urls: dict[pdf.Sort, str] = {
        "fitting": page(site_url, made["address"], VISIT),
        "wiring": page(site_url, made["address"], WIRING),
    }
    for name, laid in wanted.templates.items():
        size = PAPERS[name]
        with making(message("building/its-sheet")):
            whole = pdf.render(made, urls, size, day)
        yield _file(made["id"], "", name), whole
        if laid:
            with making(message("building/its-templates")):
                title = say(message("paper/all-openings", car=next(iter(laid.values())).car))
                yield _file(made["id"], "-templates", name), paper.printed(laid.values(), paper.PAPERS[name], title)


def page(site_url: str, address: str, view: View = VISIT) -> str:
    """The address of a page of a vehicle (`make/id`); empty where the site has none that is known."""
    if not site_url:
        return ""
    return f"{site_url.rstrip('/')}/vehicles/{view.path(address)}.html"


def _templates(record: VehicleRecord, made: Published, size: str) -> Iterator[tuple[str, paper.Sheets]]:
    """The openings in true scale; one whose outline is not recorded has none, nor has one inside the high-voltage system, nor a floor that two lengths tell."""
    for opening in record.openings.values():
        if closed_in(record, opening):
            continue
        with making(message("building/its-template", opening=opening.name)):
            drawn = _laid_out(paper.Template(made["address"], record, opening), size)
        if drawn:
            yield opening.id, drawn


def _laid_out(template: paper.Template, size: str) -> paper.Sheets | None:
    try:
        return paper.prepared(template, paper.PAPERS[size])
    except (paper.NotRecorded, paper.NoRoom):
        return None


def _first_pages(laid: Templates) -> Iterator[tuple[str, int]]:
    """The page on which each opening begins in the file of all."""
    at = 1
    for opening, drawn in laid.items():
        yield opening, at
        at += len(drawn.pages)


def _file(vehicle: str, sort: str, size: str) -> str:
    return f"{vehicle}{sort}-{size}.pdf"
