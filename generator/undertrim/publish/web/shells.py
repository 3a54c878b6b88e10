"""Page shells: a themed page rendered once, with gaps for what differs from page to page.

All vehicle pages are alike but for their title, address and body. So the theme is applied to one specimen whose title,
address and body are marks, and the rest is filling the gaps: the cost of a page is that of writing it.
"""

import hashlib
import html
import re
from dataclasses import dataclass
from functools import cached_property
from urllib.parse import quote

STEP = "undertrim-specimen"
TITLE = "undertrim-specimen-title"
BODY = "undertrim-specimen-body"


@dataclass(frozen=True)
class Shell:
    """The specimen of one group of pages: those in the same top folder, equally deep, and of one sort."""

    group: str
    text: str

    @cached_property
    def mark(self) -> str:
        """Two shells with the same mark are the same."""
        return hashlib.sha256(self.text.encode()).hexdigest()[:24]

    @cached_property
    def _pieces(self) -> list[str]:
        """Plain text and marks in turn; a mark is never looked for in what fills a gap."""
        return re.split(f"({re.escape(specimen(self.group))}|{TITLE}|{BODY})", self.text)

    def page(self, path: str, title: str, body: str) -> str:
        """The page at `path` (without its ending), with a title in plain text and a body in HTML."""
        fill = {specimen(self.group): html.escape(quote(path)), TITLE: html.escape(title), BODY: body}
        return "".join(fill[piece] if at % 2 else piece for at, piece in enumerate(self._pieces))


def group(path: str) -> str:
    """Which shell a page takes: its top folder and its depth, on which the theme's relative addresses rest, and what follows a full stop
    in its name, on which its scripts do."""
    _, stop, sort = path.rpartition("/")[2].partition(".")
    return f"{path.split('/')[0]}/{path.count('/')}{stop}{sort}"


def specimen(group: str) -> str:
    """Where the specimen of a group would stand."""
    top, _, rest = group.rpartition("/")
    depth, stop, sort = rest.partition(".")
    return "/".join((top, *[STEP] * int(depth))) + stop + sort
