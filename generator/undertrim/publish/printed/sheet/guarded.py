"""Cautions on the sheet of a whole vehicle: in full before the first step they guard, with the steps in whose run they hold, and a mark at each of these.

Source: ANSI Z535.6, section safety messages, which stand at the head of what they guard and say how far they reach (seen in secondary texts only).
"""

from collections.abc import Iterator, Sequence

from undertrim.publish.encoding import Published
from undertrim.publish.facts import told
from undertrim.words import Value, message

_NEAR = 3
"""So many steps on a caution is still in mind: a wait between two panels begins nothing new (ours)."""


def guarded(rows: Sequence[Published], steps: Sequence[Published]) -> Iterator[Published]:
    """The rows made of `steps` with what stands before them, and under `guarded` what stands before an earlier step of the run.

    Where a run begins the caution is in full the first time, DANGER each time; else it is signal word and hazard with the step that has the rest.
    """
    full: dict[told.Wording, int] = {}
    heads = {(run[0], wording): run for wording, found in _runs(steps).items() for run in found}
    begun: dict[told.Wording, int] = {}
    for number, (row, step) in enumerate(zip(rows, steps, strict=True), start=1):
        before, marks = [], []
        for caution in step["cautions"]:
            wording = told.wording(caution)
            if run := heads.get((number, wording)):
                short = full.setdefault(wording, number) != number and caution["signal"] != "DANGER"
                begun[wording] = number
                before.append({**caution, "short": told.short(full[wording]) if short else "", "reach": _reach(run)})
            elif (mark := {"signal": caution["signal"], "step": begun[wording]}) not in marks:
                marks.append(mark)
        yield {**row, "cautions": before, "guarded": marks, "led": []}


def _runs(steps: Sequence[Published]) -> dict[told.Wording, list[list[int]]]:
    """The steps of each caution, counted from 1, in runs of those that are near each other."""
    found: dict[told.Wording, list[list[int]]] = {}
    for number, step in enumerate(steps, start=1):
        for wording in dict.fromkeys(map(told.wording, step["cautions"])):
            runs = found.setdefault(wording, [])
            if runs and number - runs[-1][-1] <= _NEAR:
                runs[-1].append(number)
            else:
                runs.append([number])
    return found


def _reach(run: Sequence[int]) -> Value:
    """The steps a caution holds for, where it is more than the one it stands before."""
    return message("cautions/reach", first=run[0], last=run[-1]) if len(run) > 1 else ""
