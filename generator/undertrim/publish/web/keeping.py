"""What a device keeps of the site, so that it is there without a signal: lists for the keeper, which runs beside the pages.

`keeper/list.json` names every file that all pages rest on, with a mark that changes with it, and of each make how its own list is marked.
`keeper/<make>.json` does so for the pages of the make's vehicles, and names by vehicle what is kept when somebody asks for it: sheets and
pictures. The keeper itself (`keeper.js`) stands at the top of the site, since a browser lets it see to nothing above its place.
"""

import hashlib
import json
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from undertrim.publish.facts.shelf import FOLDER
from undertrim.publish.web import scripts, site
from undertrim.publish.web.content import Content
from undertrim.publish.web.shells import group
from undertrim.publish.web.views import VIEWS

MOST_WHOLE = 100
"""A collection of so many vehicles is kept whole without being asked; of a larger one people choose cars or makes. A default of ours."""

LIST = "keeper/list.json"
_KINDS = {".html", ".js", ".css", ".svg", ".png", ".ico", ".woff", ".woff2"}
_UNUSED = "assets/javascripts/lunr/"
"""Languages of the theme's search, which the site does without."""


def marked(folder: Path) -> dict[str, str]:
    """The files of a site as the site engine made it that pages show or load, by name with their marks."""
    found = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*") if path.suffix in _KINDS}
    return {name: _mark_of(found[name].read_bytes()) for name in sorted(found) if not name.startswith(_UNUSED)}


def listed(held: Content, shells: site.Shells, framed: Mapping[str, str], name: str) -> Content:
    """What a site holds, with the lists of all that it holds, the keeper, and what makes it one that can be installed under its `name`.

    `framed` are the files that the site engine made, with their marks.
    """
    makes = _makes(held, shells)
    lists = {f"keeper/{make}.json": _text(one) for make, one in makes.items()}
    common = {**framed, **dict(_common(held, shells))}
    whole = sum(len(one["pages"]) for one in makes.values()) <= MOST_WHOLE * len(VIEWS)
    marks = {make: _mark(lists[f"keeper/{make}.json"]) for make in makes}
    added = {
        LIST: _text({"whole": whole, "files": dict(sorted(common.items())), "makes": marks}),
        "keeper.js": scripts.bundle("keeper"),
        "site.webmanifest": _text(_installed(name)),
        **lists,
    }
    return replace(held, files={**held.files, **added})


def _installed(name: str) -> dict[str, object]:
    """What a browser needs to install the site beside its programs (W3C Web Application Manifest)."""
    icon = {"src": "assets/undertrim/mark.svg", "sizes": "any", "type": "image/svg+xml"}
    return {
        "name": name, "short_name": name, "start_url": "index.html", "scope": "./", "display": "standalone",
        "background_color": "#ffffff", "theme_color": "#1f3a47", "icons": [icon],
    }  # fmt: skip


def _common(held: Content, shells: site.Shells) -> Iterator[tuple[str, str]]:
    """Our own files that all vehicles share: pages of makes, the finder, the shelf."""
    for path, body in held.shelled.items():
        if not path.startswith("vehicles/"):
            yield f"{path}.html", _mark(shells[group(path)].text, body.title, body.key)
    for name, text in held.files.items():
        if name.endswith(".js"):
            yield name, _mark(text)


def _makes(held: Content, shells: site.Shells) -> Mapping[str, dict[str, dict[str, object]]]:
    """Of each make the pages of its vehicles with their marks, what they fetch from the shelf, and what else each vehicle has."""
    makes: dict[str, dict[str, dict[str, object]]] = defaultdict(lambda: {"pages": {}, "more": {}})
    marks: dict[str, str] = {}
    for path, body in sorted(held.shelled.items()):
        top, *rest = path.split("/")
        if top == "vehicles":
            shell = shells[group(path)].text
            marks[shell] = marks.get(shell) or _mark(shell)
            makes[rest[0]]["pages"][f"{path}.html"] = _mark(marks[shell], body.title, body.key)
    for name in sorted(held.copies):
        top, make, file = name.split("/")
        if not file.endswith(".json"):
            part = "pages" if top == FOLDER else "more"
            # by its digest, or the folder of the cache, which is named by all that its files are made of
            makes[make][part][name] = _mark(*held.copies[name].key.split("/")[-2:])
    return makes


def _mark(*parts: str) -> str:
    return _mark_of("\0".join(parts).encode())


def _mark_of(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:12]


def _text(data: object) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
