"""The files that stand beside a vehicle's page: its data, its sheets, and a paper template of each opening."""

from collections.abc import Iterator
from datetime import date

from undertrim.derive.procedure.closed import closed_in
from undertrim.publish.build.failures import making
from undertrim.publish.encoding import Published, compact
from undertrim.publish.printed import paper, pdf
from undertrim.publish.printed.sheet import Paper
from undertrim.publish.web.views import VISIT, WIRING, View
from undertrim.record.model import VehicleRecord
from undertrim.words import message

PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}


def data(made: Published) -> tuple[str, bytes]:
    """The facts as JSON, with the name of their file."""
    return f"{made['id']}.json", compact(made).encode()


def sheets(record: VehicleRecord, made: Published, site_url: str, day: date) -> Iterator[tuple[str, bytes]]:
    """Everything to print, with the names of the files; `day` is the day of printing."""
    url, wiring_url = (page(site_url, made["address"], view) for view in (VISIT, WIRING))
    for name, size in PAPERS.items():
        with making(message("building/its-sheet")):
            fitting = pdf.render(made, url, size, day)
        with making(message("building/its-wiring-sheet")):
            wiring = pdf.render_wiring(made, wiring_url, size, day)
        yield f"{made['id']}-{name}.pdf", fitting
        yield f"{made['id']}-wiring-{name}.pdf", wiring
    yield from _templates(record, made)


def page(site_url: str, address: str, view: View = VISIT) -> str:
    """The address of a page of a vehicle (`make/id`)."""
    return f"{site_url.rstrip('/')}/vehicles/{view.path(address)}.html"


def _templates(record: VehicleRecord, made: Published) -> Iterator[tuple[str, bytes]]:
    """The openings in true scale; one whose outline is not recorded has none, nor has one inside the high-voltage system."""
    for opening in record.openings.values():
        if closed_in(record, opening):
            continue
        for name in PAPERS:
            with making(message("building/its-template", opening=opening.name)):
                drawn = _template(paper.Template(made["address"], record, opening), name)
            if drawn:
                yield template_file(made["id"], opening.id, name), drawn


def _template(template: paper.Template, size: str) -> bytes | None:
    try:
        return paper.render(template, paper.PAPERS[size])
    except (paper.NotRecorded, paper.NoRoom):
        return None


def template_file(vehicle: str, opening: str, size: str) -> str:
    """The name of an opening's template."""
    return f"{vehicle}-{opening}-template-{size}.pdf"
