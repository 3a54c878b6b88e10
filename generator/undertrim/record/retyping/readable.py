"""Reads on behind each place where YAML stops, as long as there is something that would be read there."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError

from undertrim.record import syntax
from undertrim.record.problem import Position
from undertrim.record.retyping.shown import first_change, shown
from undertrim.record.retyping.slips import slips
from undertrim.record.retyping.typed_lines import Mend, Slip, with_line
from undertrim.words import Message, message

MOST_MENDS = 20
MOST_IN_A_LINE = 2
MOST_READ = 20_000_000
"""Characters read in all trials for one file, about two seconds; then the rest of its slips is left for the next run."""


@dataclass(frozen=True, slots=True)
class Retyped:
    """Lines that can be read further: its mends in the order in which they were found, and what still cannot be read, if anything."""

    lines: list[str]
    mends: tuple[Mend, ...]
    rest: syntax.Fault | None


@dataclass(frozen=True, slots=True)
class _Reached:
    """How far the parser comes: how many things it understood, the line of the last, and what stopped it, if anything did."""

    many: int
    line: int
    error: YAMLError | None

    @property
    def order(self) -> tuple[bool, int]:
        return (True, 0) if self.error is None else (False, self.many)


@dataclass(slots=True)
class _Trials:
    """Tries changes, as long as there is time."""

    left: int = MOST_READ

    def best(self, lines: Sequence[str], reached: _Reached) -> tuple[Slip, _Reached, bool] | None:
        """The change that leads furthest, if any leads further, and whether no other leads as far."""
        found = [(slip, far) for slip, far in self._tried(lines, reached) if far.order > reached.order]
        if not found:
            return self._by_itself(lines, reached)
        most = max(far.order for _, far in found)
        equal = [(slip, far) for slip, far in found if far.order == most]
        moved, far = equal[0]
        if far.error and _only_moves(lines, moved) and (other := self._by_itself(lines, reached)):
            return other  # to move a line ends blocks, which looks like reading further
        return (*equal[0], len({slip.edit for slip, _ in equal}) == 1)

    def _by_itself(self, lines: Sequence[str], reached: _Reached) -> tuple[Slip, _Reached, bool] | None:
        """A change of the line that stops the parser with which all up to there is read; the next line may have a slip too, and then nothing leads further."""
        (at, *_), _ = _places(lines, reached)
        if _reach("\n".join(lines[: at + 1])).error is None:
            return None
        for slip in slips(lines, (at,), ()):
            changed = with_line(lines, slip.edit)
            self.left -= 2 * sum(map(len, lines))
            if self.left > 0 and not _only_moves(lines, slip) and _reach("\n".join(changed[: at + 1])).error is None:
                return slip, _reach("\n".join(changed)), False
        return None

    def _tried(self, lines: Sequence[str], reached: _Reached) -> Iterator[tuple[Slip, _Reached]]:
        size = sum(map(len, lines))
        for slip in slips(lines, *_places(lines, reached)):
            self.left -= size
            if self.left < 0:
                return
            yield slip, _reach("\n".join(with_line(lines, slip.edit)))


def readable(given: Sequence[str]) -> Retyped:
    """The lines with every slip mended that keeps YAML from reading them and that can be told."""
    lines = list(given)
    mends: list[Mend] = []
    stops: list[syntax.Fault] = []  # what stopped the parser before each mend
    trials = _Trials()
    reached = _reach("\n".join(lines))
    while reached.error is not None:
        stops.append(syntax.explain(reached.error, "\n".join(lines)))
        best = trials.best(lines, reached) if len(mends) < MOST_MENDS else None
        if best is None or _again(mends, best[0]):
            return _stopped(lines, mends, stops)
        slip, reached, certain = best
        mends.append(_mend(lines, slip, certain))
        lines = with_line(lines, slip.edit)
    return Retyped(lines, tuple(mends), None)


def _only_moves(lines: Sequence[str], slip: Slip) -> bool:
    return all(lines[number].strip() == line.strip() for number, line in slip.edit)


def _again(mends: Sequence[Mend], slip: Slip) -> bool:
    """Whether a line would be mended so often that something else must be wrong there."""
    return [mend.edit[0][0] for mend in mends].count(slip.edit[0][0]) >= MOST_IN_A_LINE


def _stopped(lines: list[str], mends: list[Mend], stops: list[syntax.Fault]) -> Retyped:
    """Without what was mended in the line that nothing mends: it was the wrong thing."""
    while mends and mends[-1].position.line == stops[-1].position.line:
        mends.pop()
        stops.pop()
    return Retyped(lines, tuple(mends), stops[-1])


def _places(lines: Sequence[str], reached: _Reached) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The lines to look at, from 0: where the parser stopped; then what it read last, and where it says that this began."""
    error = reached.error
    mark, context = (getattr(error, name, None) for name in ("problem_mark", "context_mark"))
    at = min(mark.line, len(lines) - 1) if mark else reached.line
    above = next((line for line in range(at - 1, -1, -1) if lines[line].strip()), at)
    above = above if lines[above].startswith(" ") else at
    others = dict.fromkeys((reached.line, *([context.line] if context else ())))
    return tuple(dict.fromkeys((at, above))), tuple(
        line for line in others if line < len(lines) and line not in (at, above)
    )


def _reach(text: str) -> _Reached:
    many = line = 0
    try:
        for event in YAML(typ="safe", pure=False).parse(text):
            many, line = many + 1, event.start_mark.line
    except YAMLError as error:
        return _Reached(many, line, error)
    return _Reached(many, line, None)


def _mend(lines: Sequence[str], slip: Slip, certain: bool) -> Mend:
    number, line = slip.edit[0]
    before = lines[number]
    column = first_change(before, line) if slip.column is None else slip.column
    place = Position(number + 1, min(column, max(len(before) - 1, 0)) + 1)
    said = _said(slip.said, before, line) if slip.said else None
    return Mend(place, said, slip.edit, certain and slip.sure and said is not None)


def _said(what: Message, before: str, line: str) -> Message:
    """What is wrong, with the line as it must be typed, or with its indent where it is only that."""
    if line.strip() == before.strip():
        width = len(line) - len(line.lstrip())
        return message("yaml/mended-indent" if width else "yaml/mended-at-start", what=what, count=width)
    return message("yaml/mended", what=what, line=shown(before, line))
