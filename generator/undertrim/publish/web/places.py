"""The openings of the collection for the pages of gear: a slice for each make and kind of gear, cut where it is large, and the list of them.

A page of gear asks for them one by one and says of each what it comes to. No page of a vehicle rests on them, and they rest on no gear.
They are classic scripts that call `undertrimPlaces(name, data)`, so that they also load from a folder on disk.
"""

import json
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from undertrim.publish.encoding import compact
from undertrim.publish.web.content import Copy
from undertrim.record.digests import joined

FOLDER = "places"
MOST_TOGETHER = 20
"""So many vehicles stand in one slice: some 40 KB, of which a phone has the answers in a second or two."""


@dataclass(frozen=True, slots=True)
class Part:
    """A vehicle's openings for one kind of gear: whose they are, a digest of them, and how to get them as JSON."""

    make: str
    name: str
    digest: str
    content: Callable[[], bytes]


def slices(by_kind: Mapping[str, Sequence[Part]]) -> tuple[dict[str, Copy], dict[str, str]]:
    """The slices by their path in the site, and the file that lists them, where a site has any opening."""
    copies: dict[str, Copy] = {}
    listed: dict[str, list[list[object]]] = defaultdict(list)
    for kind, parts in sorted(by_kind.items()):
        for name, make, held in _cut(kind, parts):
            copies[f"{FOLDER}/{name}.js"] = Copy(joined(*(part.digest for part in held)), partial(_content, name, held))
            listed[kind].append([name, make, len(held)])
    return copies, {f"{FOLDER}/start.js": _script("start", compact(listed))}


def _cut(kind: str, parts: Sequence[Part]) -> Iterator[tuple[str, str, list[Part]]]:
    makes: dict[str, list[Part]] = defaultdict(list)
    for part in parts:
        makes[part.make].append(part)
    for make, of in makes.items():
        for number, at in enumerate(range(0, len(of), MOST_TOGETHER), 1):
            yield f"{make}/{kind}-{number}", of[0].name, of[at : at + MOST_TOGETHER]


def _content(name: str, parts: Sequence[Part]) -> bytes:
    return _script(name, f"[{','.join(part.content().decode() for part in parts)}]").encode()


def _script(name: str, data: str) -> str:
    return f"undertrimPlaces({json.dumps(name)},{data.replace('<', chr(92) + 'u003c')});\n"
