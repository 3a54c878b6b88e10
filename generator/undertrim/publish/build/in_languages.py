"""All that a site holds in each of its languages: made, rendered, and laid out as files."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from undertrim.publish.web import keeping, placing, site
from undertrim.publish.web.content import Content
from undertrim.publish.web.editions import Edition, editions, in_its_language
from undertrim.words import speaking

Contents = Mapping[Edition, Content]
"""What the site holds besides the handbook, in each of its languages."""
AllShells = Mapping[Edition, site.Shells]

SCHEMA = "published.schema.json"
"""What describes the data beside the pages; it stands at the top of the site."""


def contents(tags: Sequence[str], make: Callable[[], Content]) -> Contents:
    """What `make` gives in each language. What says nothing in any stands in the first alone."""
    found = {}
    for edition in editions(tags):
        with speaking(edition.speech):
            found[edition] = in_its_language(make(), edition)
    return {one: _without_shared(held) if one.place else held for one, held in found.items()}


def _without_shared(held: Content) -> Content:
    """Scripts are in words; data, pictures and sheets stand once."""
    own = {name: copy for name, copy in held.copies.items() if name.endswith(".js")}
    return replace(held, copies=own, files={name: text for name, text in held.files.items() if name != SCHEMA})


def framed(held: Contents) -> Iterator[str]:
    """What of the content stands in the frames of the pages: it changes where those must be made anew."""
    for edition, one in held.items():
        yield from (f"{edition.place}{path} {body.title} {body.key}" for path, body in one.framed.items())
        yield from (f"{edition.place}{path}" for path in sorted(one.shelled))


def rendered(root: Path, held: Contents, fresh: Path) -> AllShells:
    """Have the site engine build each language into its place. Raises site.BadSettings."""
    found = {}
    for edition, one in held.items():
        with speaking(edition.speech):
            found[edition] = site.render(root, one, fresh, edition)
    return found


def pieces(held: Contents, shells: AllShells, engine: Mapping[str, str], name: str) -> dict[str, placing.Piece]:
    """Our own files, and the lists of all for those who keep the site on a device; `engine` are the engine's files with their marks."""
    found: dict[str, placing.Piece] = {}
    for edition, one in keeping.listed(held, shells, engine, name).items():
        own = placing.pieces(one, shells[edition])
        found |= {f"{edition.place}{file}": piece for file, piece in own.items()}
    return found
