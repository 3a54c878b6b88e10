"""Headings of a page in a further language are reached by the names that they have in the page whose place it takes: a link to one holds in every language."""

import re
from collections.abc import Iterator

from markdown.extensions.toc import slugify

_FENCE = re.compile(r"^```.*?^```$", re.MULTILINE | re.DOTALL)
_HEADING = re.compile(r"^#{1,6} +(.+?)[ #]*$", re.MULTILINE)


class Anchors:
    """Names the headings of one page after the other, as the `toc` extension of Markdown asks for them."""

    def __init__(self) -> None:
        self._left: Iterator[str] = iter(())

    def begin(self, original: str = "") -> None:
        """Begin a page. `original` is the Markdown that its headings are named after, one by one; they name themselves where it has no more."""
        self._left = iter(_HEADING.findall(_FENCE.sub("", original)))

    def slug(self, text: str, separator: str) -> str:
        """The name of the next heading, whose own words are `text`."""
        named: str = slugify(next(self._left, text), separator)
        return named
