"""What people mistype, each as the change that would put it right; which of them is meant is tried by who asks."""

from collections.abc import Callable, Iterator, Sequence

from undertrim.record.retyping import in_brackets, in_lines, in_texts
from undertrim.record.retyping.typed_lines import Slip

_KINDS: tuple[Callable[[Sequence[str], int], Iterator[Slip]], ...] = (
    in_lines.comma_behind,
    in_texts.closed_late,
    in_texts.unclosed,
    in_texts.quoted_inside,
    in_brackets.other_signs,
    in_brackets.commas_missing,
    in_brackets.texts,
    in_brackets.closers,
    in_texts.whole,
    in_lines.spaces,
    in_lines.lists,
    in_lines.below_field,
    in_lines.indents,
)


def slips(lines: Sequence[str], stopped: Sequence[int], others: Sequence[int]) -> Iterator[Slip]:
    """Every change worth a trial: where the parser stopped, and in lines where it may have gone wrong before, the likeliest first.

    Only lines where it stopped may stand wrong: an earlier one that is moved takes others with it.
    """
    for places, kinds in ((stopped, _KINDS), (others, _KINDS[:-2])):
        for at in places:
            for kind in kinds:
                yield from (
                    slip for slip in kind(lines, at) if any(lines[number] != line for number, line in slip.edit)
                )
