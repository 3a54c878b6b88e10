"""A review for a terminal, and as one comment of a pull request."""

import re
from collections.abc import Iterator

from undertrim.publish.encoding import Published
from undertrim.publish.terminal.lines import wrapped
from undertrim.publish.terminal.reviewing import MARKS, Block, Mark, blocks
from undertrim.record.problem import printable
from undertrim.words import message, say

MOST = 65_536
"""Characters of a comment: what GitHub takes (its API refuses a longer body); GitLab takes more."""
_SIGNS = {"weaker": "🔴", "care": "🟠"}
_KEPT = 400
"""Characters kept free for the sentence about what is left out."""


def review_text(found: Published) -> str:
    """For a terminal, ending in a newline."""
    return "\n".join(_text(blocks(found))) + "\n"


def _text(every: list[Block]) -> Iterator[str]:
    for number, block in enumerate(every):
        if number and block.level < 3:
            yield ""
        yield from wrapped(printable(block.title), "" if block.level < 3 else "  ", "  ")
        for line in block.lines:
            indent = "    " if block.level == 3 else "  "
            yield from wrapped(f"{_word(line)}{printable(line.text)}", indent, f"{indent}  ")


def _word(line: Mark) -> str:
    return f"{say(message(MARKS[line.weight]))}: " if line.weight in MARKS else ""


def review_markdown(found: Published, most: int = MOST) -> str:
    """One comment of at most so many characters, the riskiest first; what does not go in is counted at the end."""
    lines = list(_markdown(blocks(found)))
    kept, size = [], 0
    for line in lines:
        size += len(line) + 1
        if size > most - _KEPT:
            break
        kept.append(line)
    if len(kept) == len(lines):
        return "\n".join(lines) + "\n"
    while kept and not kept[-1].startswith(("- ", ">")):  # no heading with nothing below it
        kept.pop()
    left = sum(line.startswith("- ") for line in lines[len(kept) :])
    more = message("review/left-out", count=left, most=most, base=found["base"])
    return "\n".join([*kept, "", f"**{_escaped(say(more))}**"]) + "\n"


def _markdown(every: list[Block]) -> Iterator[str]:
    for block in every:
        yield from ("", f"{'#' * (block.level + 1)} {_escaped(block.title)}", "")
        for line in block.lines:
            yield _escaped(line.text) if block.level == 1 else f"- {_sign(line)}{_escaped(line.text)}"


def _sign(line: Mark) -> str:
    """A sign and a word: colour alone tells nothing to whoever does not see it."""
    return f"{_SIGNS[line.weight]} **{say(message(MARKS[line.weight]))}** " if line.weight in MARKS else ""


_MARKUP = re.compile(r"([\\`*_{}\[\]()<>#+\-.!|~=:$^])")
_CALLING = re.compile(
    r"([@#!~$%&])(?=\w)|(?i:(https?|ftp|mailto)(?=:))|(?i:\b(www)(?=\.))|(?i:\b(GH|GL)(?=-\d))|([\w-])(?=@\w)"
)
_BREAK = "\N{ZERO WIDTH SPACE}"
"""Between the sign that calls somebody and the name: a mention, a reference or an address that would be made a link needs both side by side."""


def _escaped(text: str) -> str:
    """Text as it stands, whatever it holds: no markup, no HTML, no link, and nobody is told of it.

    ASCII punctuation is escaped by a backslash (CommonMark 0.31, 2.4), `&` and `<` are written as entities for renderers that pass HTML through.
    """
    broken = _CALLING.sub(lambda found: f"{found[0]}{_BREAK}", printable(text))
    escaped = broken.replace("&", "&amp;")
    return _MARKUP.sub(_written, escaped)


def _written(found: re.Match[str]) -> str:
    sign = found[0]
    return {"<": "&lt;", ">": "&gt;"}.get(sign, sign if sign in ".:-()+=" else f"\\{sign}")
