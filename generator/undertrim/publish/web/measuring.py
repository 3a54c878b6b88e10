"""The page of drawings that show how dimensions are measured, and the same drawings in the handbook."""

import html
import re

from undertrim.publish.pictures.drawings import measuring, svg
from undertrim.publish.web.pages import environment
from undertrim.record.measuring import SCHEME
from undertrim.words import message, once_per_language, say

PAGE = "measuring"
"""Where it stands in the site; each drawing has its name as its place there."""

_PICTURE = re.compile(rf'(?:<p>)?<img alt="([^"]*)" src="{SCHEME}([a-z-]+)"[^>]*>(?:</p>)?')


def title() -> str:
    """The title of the page."""
    return say(message("sketches/heading"))


@once_per_language
def page() -> str:
    """The body of the page."""
    return environment().get_template("measuring.html.j2").render(names=list(measuring.SCENES), figure=figure)


def figure(name: str, caption: str = "") -> str:
    """A drawing with its caption, as HTML. Raises KeyError for a name that none has."""
    drawn = svg.inline(measuring.drawing(name))
    words = caption or html.escape(say(measuring.title(name)))
    return f'<figure class="ut-sketch"><figcaption>{words}</figcaption>{drawn}</figure>'


def with_drawings(content: str) -> str:
    """A page of the handbook with our drawings in the place of the pictures that name them."""
    return _PICTURE.sub(lambda found: figure(found[2], found[1]) if found[2] in measuring.SCENES else found[1], content)
