"""The theme's templates leave indents and blank lines on every page: an eighth of a rule's page, and four KB on each page of each vehicle."""

import re

_AS_TYPED = re.compile(r"(<(?P<tag>pre|textarea|script|style)\b.*?</(?P=tag)>)", re.DOTALL | re.IGNORECASE)
_BETWEEN_LINES = re.compile(r"\s*\n\s*")


def closed_up(page: str) -> str:
    """A page of HTML without indents and blank lines, which are one space to whoever shows it; what counts as typed stays."""
    pieces = _AS_TYPED.split(page)
    # text, what stays, and its tag in turn
    return "".join(
        _BETWEEN_LINES.sub("\n", piece) if at % 3 == 0 else piece * (at % 3 == 1) for at, piece in enumerate(pieces)
    )
