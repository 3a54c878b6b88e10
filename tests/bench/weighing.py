"""Weighs what is on the disk for a vehicle, and what a device keeps by itself, in the site of the shipped records: `make bench ARGS=--bytes`.

"Sent" is compressed, with gzip at level 6. What stands in another language is told apart, since a reader has one.
"""

import json
import re
import sys
import tempfile
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from herd import ROOT
from sizes import of_a_vehicle, sent

from undertrim.publish.build.building import build
from undertrim.record import collection
from undertrim.record.store import Workspace

_PICTURE = re.compile(r"-[\w-]*[0-9a-f]{12}(?:-\d+w)?\.(?:png|jpe?g|webp)$")
"""A published photograph: its name ends in a digest."""


def weighing() -> int:
    """Both tables."""
    place = Workspace(ROOT)
    with tempfile.TemporaryDirectory(prefix="undertrim-bench-") as folder:
        site = Path(folder) / "site"
        build(place, site, sheets=True, progress=lambda _: None)
        cars = list(place.files([place.records / "vehicles"]))
        sys.stdout.write(_table("on disk, of a vehicle in the first language", _of_vehicles(site, cars), len(cars)))
        for tag in collection.settings(ROOT).language:
            home = site if not (site / tag).is_dir() else site / tag
            sys.stdout.write(_table(f"kept by a device that reads {tag}", _kept(site, home), 1))
    return 0


def _of_vehicles(site: Path, cars: Iterable[Path]) -> Iterator[tuple[str, Path]]:
    for car in cars:
        for path in of_a_vehicle(site, car):
            rest = path.name.removeprefix(car.stem)
            yield f"{path.relative_to(site).parts[0]}/*{'photographs' if _PICTURE.search(rest) else rest}", path


def _kept(site: Path, home: Path) -> Iterator[tuple[str, Path]]:
    """What stands in the lists of a language that nobody chose anything in."""
    named = json.loads((home / "keeper/list.json").read_bytes())
    lists = [json.loads((home / f"keeper/{make}.json").read_bytes())["pages"] for make in named["makes"]]
    for name in sorted(set(named["files"]).union(*lists)):
        path = site / name
        parts = path.relative_to(home if path.is_relative_to(home) else site).parts
        sort = ".".join(parts[-1].split(".")[1:]) if parts[0] in ("vehicles", "shelf") else path.suffix[1:]
        yield f"{parts[0] if len(parts) > 1 else ''}/*.{sort}", path


def _table(title: str, found: Iterable[tuple[str, Path]], each: int) -> str:
    """Sums by sort, the largest first, in KB for each of so many."""
    sums: Mapping[str, list[float]] = defaultdict(lambda: [0.0, 0.0])
    for sort, path in found:
        for row in (sums[sort], sums["together"]):
            row[0] += path.stat().st_size / each / 1000
            row[1] += sent(path) / each / 1000
    rows = sorted(sums.items(), key=lambda item: -item[1][0])
    lines = [f"{name:38}{raw:>10.1f}{packed:>10.1f}" for name, (raw, packed) in rows]
    return "\n".join([f"{title + ', KB':50}{'':8}sent", *lines, "", ""])
