"""How large a built site's pieces are, in bytes; "sent" is compressed, with gzip at level 6."""

import gzip
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from herd import Herd

from undertrim.publish.web.views import VIEWS

OTHERS = "its files but for what is printed, bytes"
SOME = 7
"""A mean over so many vehicles, one of each sort."""

_ASKED = re.compile(r'(?:src|href)="([^":?#]+\.(?:js|css|svg|png|woff2))[^"]*"')


def of_a_vehicle(site: Path, record: Path) -> list[Path]:
    """All that stands in a site for the vehicle of a record, in the first language: pages, data, what scripts fetch, sheets, photographs."""
    make, name = (
        record.parent.name,
        re.compile(re.escape(record.stem) + r"[.-]\D.*|" + re.escape(record.stem) + r"\.\w+"),
    )
    folders = (site / "vehicles" / make, site / "shelf" / make)
    return sorted(path for folder in folders for path in folder.iterdir() if name.fullmatch(path.name))


def sizes(herd: Herd, out: Path) -> dict[str, float]:
    """Sizes of one and the same vehicle's pages, of the finder's index, and of the way to a vehicle."""
    record = herd.paths[0]
    page = out / "vehicles" / record.parent.name / f"{record.stem}.html"
    pages = [page.with_name(f"{view.path(record.stem)}.html") for view in VIEWS]
    start, *pieces = sorted((out / "finder").glob("*.js"), key=lambda path: path.name != "start.js")
    largest = max(pieces, key=sent, default=None)
    way = {
        out / "index.html",
        page,
        start,
        *_asked(out / "index.html"),
        *_asked(page),
        *([largest] if largest else []),
    }
    return {
        OTHERS: sum(path.stat().st_size for record in herd.paths[-SOME:] for path in of_a_vehicle(out, record))
        / len(herd.paths[-SOME:]),
        "one vehicle's pages together, bytes": sum(each.stat().st_size for each in pages),
        "one vehicle's page of the visit, bytes": page.stat().st_size,
        "one vehicle's page of the visit, bytes sent": sent(page),
        "home page, bytes sent": sent(out / "index.html"),
        "finder's first file, bytes sent": sent(start),
        "finder's files together, bytes sent": _all_sent([start, *pieces]),
        "home to a found vehicle, bytes sent": _all_sent(way),
    }


def sent(path: Path) -> int:
    """The bytes of a file as they are sent."""
    return len(gzip.compress(path.read_bytes(), 6))


def _all_sent(paths: Iterable[Path]) -> int:
    return sum(sent(path) for path in paths)


def _asked(page: Path) -> Iterator[Path]:
    """The site's files that a page asks for by its own markup."""
    for name in _ASKED.findall(page.read_text(encoding="utf-8")):
        path = (page.parent / name).resolve()
        if path.is_file():
            yield path
