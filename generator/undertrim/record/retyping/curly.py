"""Quotes as a text processor sets them: to YAML they are letters, so a whole value in them is not in quotes."""

import re
from collections.abc import Iterator, Sequence

from undertrim.record.problem import Position
from undertrim.record.retyping.shown import shown
from undertrim.record.retyping.typed_lines import Mend, with_line
from undertrim.record.yaml_text import as_typed
from undertrim.words import message

_CURLY = "“”„‟«»‘’‚‛"
_WHOLE = re.compile(
    rf"(?P<head>(?:^\s*|: +|[\[{{,] *|- +))[{_CURLY}\"](?P<text>[^{_CURLY}\"\n]*)[{_CURLY}\"](?=\s*(?:[,\]}}]|$))"
)


def straight(lines: Sequence[str]) -> tuple[list[str], list[Mend]]:
    """The lines with straight quotes around each value that stands in others, and what was changed."""
    mends = list(_mends(lines)) if any(sign in line for line in lines for sign in _CURLY) else []
    changed = list(lines)
    for mend in mends:
        changed = with_line(changed, mend.edit)
    return changed, mends


def _mends(lines: Sequence[str]) -> Iterator[Mend]:
    for number, line in enumerate(lines):
        found = [one for one in _WHOLE.finditer(line) if _is_curly(one)]
        if found and not line.lstrip().startswith("#"):
            changed = _WHOLE.sub(
                lambda one: one["head"] + as_typed(one["text"], in_brackets=True) if _is_curly(one) else one[0], line
            )
            place = Position(number + 1, found[0].end("head") + 1)
            said = message("yaml/mended", what=message("yaml/curly-quotes"), line=shown(line, changed))
            yield Mend(place, said, ((number, changed),), certain=True)


def _is_curly(found: re.Match[str]) -> bool:
    around = found[0][len(found["head"]) :]
    return around[0] in _CURLY or around[-1] in _CURLY
