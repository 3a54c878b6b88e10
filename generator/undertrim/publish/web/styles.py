"""The style of all pages as one file: what a page asks for stands in its head, and over a weak signal each thing asked for is a wait."""

import re
from collections.abc import Iterable

SHEET = "assets/undertrim/style.css"
OF_THE_THEME = "assets/stylesheets/"

_COMMENT = re.compile(r"/\*.*?\*/\s*", re.DOTALL)


def joined(sheets: Iterable[str]) -> str:
    """Style sheets in their order, without what is said to whoever writes them. None of them names a file: a link would be read from another place."""
    return "\n".join(_COMMENT.sub("", sheet).strip() for sheet in sheets) + "\n"
