"""The site in each language of its collection: the first stands at the top, each other one in a folder that is called by its tag.

An edition is whole: its pages lead to one another as those of the first do. What says nothing in any language stands once, at the top:
the theme's files, pictures, data, and what is printed.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from urllib.parse import quote

from jinja2 import pass_context
from jinja2.runtime import Context

from undertrim.publish.web.content import Body, Content
from undertrim.words import Language, language, speaking

MANIFEST = "site.webmanifest"
"""What makes the site one that can be installed. It stands at the top alone, so scripts find the top by it."""


@dataclass(frozen=True, slots=True)
class Edition:
    """The site in one language: its tag, the folder it stands in (empty, or with a slash at its end), the tag of the first one, and the ways to the others by tag."""

    tag: str = "en"
    place: str = ""
    first: str = "en"
    others: Mapping[str, str] = field(default_factory=dict, hash=False)

    @property
    def speech(self) -> Language:
        """Its language."""
        return language(self.tag)

    @property
    def top(self) -> str:
        """The way from its top to that of the whole site."""
        return "../" if self.place else ""

    def same_pages(self, file: str) -> list[dict[str, str]]:
        """Where the page of a file stands in each other language, as a link from there, with the way to the top of that edition, the language's tag and what it calls itself."""
        back = "../" * file.count("/")
        return [
            {"tag": tag, "name": own_name(tag), "top": f"{back}{way}", "href": f"{back}{way}{quote(file)}"}
            for tag, way in self.others.items()
        ]

    def beside(self, folder: str) -> str:
        """The way from a page in a folder (`vehicles/kelbrook/`) to the files beside it in the first edition."""
        return "" if not self.place else f"{'../' * (folder.count('/') + 1)}{folder}"


FIRST = Edition()


@cache
def editions(tags: Sequence[str]) -> tuple[Edition, ...]:
    """The editions of a site in some languages, the first of which is the collection's own."""
    places = {tag: "" if tag == tags[0] else f"{tag}/" for tag in tags}
    return tuple(
        Edition(tag, place, tags[0], {other: _way(place, there) for other, there in places.items() if other != tag})
        for tag, place in places.items()
    )


def _way(place: str, other: str) -> str:
    return f"{'../' if place else ''}{other}"


@cache
def own_name(tag: str) -> str:
    """What a language calls itself (Unicode CLDR), else its tag."""
    from babel import Locale, UnknownLocaleError  # only needed where there is more than one language

    try:
        name = Locale.parse(tag, sep="-").get_display_name() or tag
    except (UnknownLocaleError, ValueError):
        return tag
    return name[:1].upper() + name[1:]


def in_its_language(held: Content, edition: Edition) -> Content:
    """The content of an edition, whose bodies are made in its language whenever they are asked for."""
    return replace(held, bodies={path: _speaking(body, edition) for path, body in held.bodies.items()})


def _speaking(body: Body, edition: Edition) -> Body:
    def made() -> str:
        with speaking(edition.speech):
            return body.html()

    return replace(body, html=made)


def with_shared(
    link: Callable[[Context, str], str], edition: Edition, shared: Iterable[str]
) -> Callable[[Context, str], str]:
    """The theme's way of making a link, in which files that stand at the top of the whole site are found there."""
    at_top = frozenset((*shared, MANIFEST))

    @pass_context
    def linked(context: Context, file: str) -> str:
        return f"{edition.top if file in at_top else ''}{link(context, file)}"

    return linked
