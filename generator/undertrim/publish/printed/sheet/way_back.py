"""What goes back as it came off, on the sheet of a whole vehicle: one line names the fasteners and leads to the step that says where each sits.

What must be tight says how tight here too. A plug that goes back on with its part, as most do, does not say so when it comes off.
"""

from collections.abc import Sequence

from undertrim.publish.encoding import Published
from undertrim.words import Value, message

_SAME = ("text", "detail", "hidden_by", "when")


def shortened(steps: Sequence[Published]) -> list[Published]:
    """The steps; one that refits what came off has its plain fasteners under `as_out`, and none of them among its others."""
    steps = [{**step, "tethers": list(map(_undone, step["tethers"]))} for step in steps]
    return [_refitted(step, steps) if step["kind"] == "refit" else step for step in steps]


def _undone(line: Published) -> Published:
    return {**line, "later_words": ""} if line["later"] == ["rejoin"] else line


def _refitted(step: Published, steps: Sequence[Published]) -> Published:
    plain = [line for line in step["fasteners"] if line["fate"] == "back"]
    number = _taken_off(step["part"], plain, steps)
    if not number:
        return step
    others = [line for line in step["fasteners"] if line not in plain]
    return {**step, "fasteners": others, "as_out": {"names": list(map(_name, plain)), "step": number}}


def _taken_off(part: str, lines: Sequence[Published], steps: Sequence[Published]) -> int:
    """The first step that takes off the part, on whichever side, with all these fasteners in it; 0 where there is none."""
    wanted = list(map(_same, lines))
    for number, step in enumerate(steps, start=1):
        if wanted and step["kind"] == "remove" and step["part"] == part:
            known = list(map(_same, step["fasteners"]))
            if all(line in known for line in wanted):
                return number
    return 0


def _same(line: Published) -> tuple[object, ...]:
    return tuple(line[key] for key in _SAME)


def _name(line: Published) -> Value:
    return message("sheet/tightened", fastener=line["text"], torque=line["torque"]) if line["torque"] else line["text"]
