"""What a device keeps of the site, so that it is there without a signal: lists for the keeper, which runs beside the pages.

Each language of the site has lists of its own, in its folder; a device keeps the one that its reader chose, with what all share. Names in them begin at
the top of the whole site. `keeper/list.json` names every file that all pages rest on, with a mark that changes with it, what is read at a desk by itself, and of each make how its own list is marked.
`keeper/<make>.json` does so for the pages of the make's vehicles, and names by vehicle what is kept when somebody asks for it: sheets and
pictures. The keeper itself (`keeper.js`) stands at the top of the site, since a browser lets it see to nothing above its place.
"""

import hashlib
import json
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path, PurePosixPath

from undertrim.publish.web import scripts, site
from undertrim.publish.web.content import Content
from undertrim.publish.web.editions import MANIFEST, Edition
from undertrim.publish.web.shells import group
from undertrim.publish.web.views import VIEWS

MOST_WHOLE = 100
"""A collection of so many vehicles is kept whole without being asked; of a larger one people choose cars or makes. A default of ours."""

LIST = "keeper/list.json"
_KINDS = {".html", ".js", ".css", ".svg", ".png", ".ico", ".woff", ".woff2"}
_WAY_IN = ("index.html", "assets/undertrim/page.js")
"""What leads from the address of the site to the language of the reader, who may have nothing else of the first one."""
_UNUSED = "assets/javascripts/"
"""The theme's own scripts, which no page loads (site_overrides/main.html)."""
_AT_A_DESK = (
    *(
        "rules/",
        "reference/",
        "evidence/",
        "answers.html",
        "photographs.html",
        "reviewing.html",
        "writing-a-record.html",
    ),
    *("gear/", "places/", "assets/undertrim/page-gear.js"),
)
"""What is read at a desk, by who writes records or orders gear: half of all bytes, and nothing in a bay, where gear comes from the shelf. It is kept
with everything, and page by page once opened."""
_WITH_THE_CAR = (".facts.js", ".questions.html")
"""What adds to a record: an eighth of all bytes. It is kept with the car, by choice or while a visit to it is under way, and once it was opened."""


def marked(folder: Path) -> dict[str, str]:
    """The files of a site as the site engine made it, by name; those that pages show or load with their marks."""
    found = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*") if path.is_file()}
    return {name: _mark_of(found[name].read_bytes()) if _shown(name) else "" for name in sorted(found)}


def _shown(name: str) -> bool:
    return PurePosixPath(name).suffix in _KINDS and not name.startswith(_UNUSED)


def listed(
    held: Mapping[Edition, Content], shells: Mapping[Edition, site.Shells], framed: Mapping[str, str], name: str
) -> Mapping[Edition, Content]:
    """What a site holds in each language, with the lists of all that it holds, the keeper, and what makes it one that can be installed under its `name`.

    `framed` are the files that the site engine made, with their marks.
    """
    places = [edition.place for edition in held if edition.place]
    shared = {name: mark for name, mark in framed.items() if name in _WAY_IN or _is_shared(name, places, framed)}
    more = _more(next(iter(held.values())))
    found = {}
    for edition, one in held.items():
        others = tuple(place for place in places if place != edition.place)
        mine = {
            name: mark
            for name, mark in framed.items()
            if name.startswith(edition.place) and not name.startswith(others)
        }
        found[edition] = _with_lists(one, edition, shells[edition], {**shared, **mine}, more)
    first = next(iter(held))
    added = {"keeper.js": scripts.bundle("keeper"), MANIFEST: _text(_installed(name))}
    found[first] = replace(found[first], files={**found[first].files, **added})
    return found


def _is_shared(name: str, places: Sequence[str], framed: Mapping[str, str]) -> bool:
    """Whether a file at the top says nothing in any language: it is no page, and no other language has one of its own."""
    own = name.startswith(tuple(places)) or any(f"{place}{name}" in framed for place in places)
    return not own and not name.endswith(".html")


def _with_lists(
    held: Content, edition: Edition, shells: site.Shells, framed: Mapping[str, str], more: Mapping[str, dict[str, str]]
) -> Content:
    """What the site holds in one language, with its lists; `more` is what stands beside the pages, by make."""
    pages = _pages(held, edition, shells)
    lists = {
        f"keeper/{make}.json": _text({
            "pages": {name: mark for name, mark in one.items() if not _by_choice(name.removeprefix(edition.place))},
            "more": {name: mark for name, mark in one.items() if _by_choice(name.removeprefix(edition.place))} | more.get(make, {}),
        })
        for make, one in pages.items()
    }  # fmt: skip
    common = {**framed, **dict(_common(held, edition, shells))}
    whole = sum(path.startswith("vehicles/") for path in held.shelled) <= MOST_WHOLE * len(VIEWS)
    marks = {make: _mark(lists[f"keeper/{make}.json"]) for make in pages}
    parts: dict[bool, dict[str, str]] = {False: {}, True: {}}
    for name, mark in sorted(common.items()):
        parts[name.removeprefix(edition.place).startswith(_AT_A_DESK)][name] = mark
    added = {LIST: _text({"whole": whole, "files": parts[False], "desk": parts[True], "makes": marks}), **lists}
    return replace(held, files={**held.files, **added})


def _installed(name: str) -> dict[str, object]:
    """What a browser needs to install the site beside its programs (W3C Web Application Manifest)."""
    icon = {"src": "assets/undertrim/mark.svg", "sizes": "any", "type": "image/svg+xml"}
    return {
        "name": name, "short_name": name, "start_url": "index.html", "scope": "./", "display": "standalone",
        "background_color": "#ffffff", "theme_color": "#1f3a47", "icons": [icon],
    }  # fmt: skip


def _common(held: Content, edition: Edition, shells: site.Shells) -> Iterator[tuple[str, str]]:
    """Our own files that all vehicles share: pages of makes, the finder, the shelf."""
    for path, body in held.shelled.items():
        if not path.startswith("vehicles/"):
            yield f"{edition.place}{path}.html", _mark(shells[group(path)].mark, body.title, body.key)
    for name, text in held.files.items():
        if name.endswith(".js"):
            yield f"{edition.place}{name}", _mark(text)


def _pages(held: Content, edition: Edition, shells: site.Shells) -> Mapping[str, dict[str, str]]:
    """The pages of each make's vehicles with their marks, and the scripts that they fetch: from the shelf, where gear goes, what is in the car, what may not be so."""
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for path, body in sorted(held.shelled.items()):
        top, *rest = path.split("/")
        if top == "vehicles":
            found[rest[0]][f"{edition.place}{path}.html"] = _mark(shells[group(path)].mark, body.title, body.key)
    for name in sorted(held.copies):
        _, make, file = name.split("/")
        if file.endswith(".js"):
            found[make][f"{edition.place}{name}"] = _mark(held.copies[name].key)
    return found


def _more(held: Content) -> Mapping[str, dict[str, str]]:
    """What else each make's vehicles have in all languages: sheets and pictures."""
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for name in sorted(held.copies):
        _, make, file = name.split("/")
        if not file.endswith((".js", ".json")):
            found[make][name] = _mark(held.copies[name].key)
    return found


def _by_choice(name: str) -> bool:
    """Whether one of a make's own files, named from the folder of its language, is kept only when somebody asks for it."""
    return name.startswith(_AT_A_DESK) or name.endswith(_WITH_THE_CAR)


def _mark(*parts: str) -> str:
    return _mark_of("\0".join(parts).encode())


def _mark_of(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:12]


def _text(data: object) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
