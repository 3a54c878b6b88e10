"""Steps as rows of a printed list: number, marks of the jobs, changes of state, fasteners and tethers."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby

from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import kits, told
from undertrim.publish.printed.sheet import combined
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.publish.template_words import listed
from undertrim.publish.terminal import plan as plan_text
from undertrim.words import Value, message, say

ARROW = "arrow"
"""The picture of the way a part goes; an empty one is none."""
_TALL = 1500
"""Characters in a step from which it may break over pages, since it might not fit on one."""


def sections(facts: Published, pictures: Pictures) -> list[Published]:
    """The steps of a visit in its sections, each step with all that it says."""
    return in_sections(facts, rows(facts, pictures))


def in_sections(facts: Published, made: Iterable[Published]) -> list[Published]:
    """Runs of rows of one section in their order; a section that comes again is `continued`."""
    titles = {section["id"]: section["title"] for section in facts["sections"]}
    seen: set[str] = set()
    found: list[Published] = []
    for name, group in groupby(made, key=lambda row: row["section"]):
        title = titles.get(name, name)
        found.append(
            {"title": message("sheet/continued", section=title) if name in seen else title, "steps": list(group)}
        )
        seen.add(name)
    return found


def rows(facts: Published, pictures: Pictures) -> Iterator[Published]:
    """A row for each step."""
    marks = {target["id"]: target["mark"] for target in facts["targets"]}
    together = combined.notes(facts)
    state = ""
    for number, (step, before) in enumerate(zip(facts["steps"], told.told_at(facts["steps"]), strict=True), start=1):
        now = step["state_words"]
        yield {
            **_row(step, pictures),
            "number": number,
            "marks": _marks(step, marks),
            "conditions": [words for words in (step["when"], together.get(number - 1, "")) if words],
            "state": now if now != state else "",
            "cautions": [_caution(*entry) for entry in zip(step["cautions"], before, strict=True)],
        }
        state = now


def _caution(caution: Published, before: int) -> Published:
    """`short` stands in the place of what the step just before has in full; empty where this one has it."""
    return {**caution, "short": told.short(before) if before else ""}


def _row(step: Published, pictures: Pictures) -> Published:
    row: Published = said(_shown(step, pictures))
    return {**row, "tall": _length(row) > _TALL}


def _shown(step: Published, pictures: Pictures) -> Published:
    return {
        "section": step["section"],
        "verb": step["verb"],
        "title": step["title"],
        "text": [*step.get("conflicts", []), *step["text"]],
        "kits": kits.lines(step),
        "items": _items(step, pictures),
        "photos": step.get("pictured", []),
        "panel": step.get("panel", []),
        "wait": step["wait"]["text"] if step["wait"] else "",
        "time": step["time"],
        "source": listed(step.get("source", [])),
    }


def _length(value: object) -> int:
    if isinstance(value, dict):
        return sum(map(_length, value.values()))
    if isinstance(value, list):
        return sum(map(_length, value))
    return len(value) if isinstance(value, str) else 0


def _marks(step: Published, marks: Mapping[str, str]) -> Value:
    """The jobs that need a step; where that is all but a few, those that do not."""
    if len(step["targets"]) == len(marks) > 1:
        return message("sheet/all-jobs")
    others = [mark for target, mark in marks.items() if target not in step["targets"]]
    if others and len(others) * 3 <= len(marks):
        return message("sheet/all-jobs-but", jobs=listed(others))
    return listed(marks[target] for target in step["targets"])


def _items(step: Published, pictures: Pictures) -> list[Published]:
    """In the order of the hands: fasteners, the way it goes, tethers."""
    fasteners = [_fastener(line, pictures) for line in step["fasteners"]]
    # A bare `unscrew` says nothing that the fasteners do not.
    motion = [_item(ARROW, message("sheet/motion", motion=step["motion"]), "")] if step["directed"] else []
    return [*_as_out(step), *fasteners, *motion, *_tethers(step, pictures)]


def _as_out(step: Published) -> list[Published]:
    """What goes back as it came out (`way_back`)."""
    if "as_out" not in step:
        return []
    out = step["as_out"]
    return [
        _item(
            "",
            listed(out["names"]),
            say(message("fasteners/back")),
            rest=[message("sheet/as-at-step", step=out["step"])],
        )
    ]


def _tethers(step: Published, pictures: Pictures) -> Iterator[Published]:
    """Tethers on one thing with which the same is done share a line."""
    for _, group in groupby(step["tethers"], key=lambda line: said(_tether({**line, "name": ""}, pictures))):
        same = list(group)
        yield _tether({**same[0], "name": say(listed(line["name"] for line in same))}, pictures)


def _fastener(line: Published, pictures: Pictures) -> Published:
    hidden = message("vehicle-page/under", part=line["hidden_by"]) if line["hidden_by"] else ""
    rest = [line["detail"], hidden, line["later_words"]]
    loud = line["fate"] not in ("out", "back")
    return _item(pictures.fastener(line), line["text"], line["fate_words"], loud, rest, line["when"])


def _tether(line: Published, pictures: Pictures) -> Published:
    circuit = message("sheet/restraint-wiring") if line["restraint"] else line["circuit_words"]
    rest = [line["later_words"], circuit, line["how"]]
    loud = line["act"] not in ("undo", "rejoin")
    drawn, name = pictures.tether(line["kind"]), plan_text.tether_name(line)
    return {**_item(drawn, name, line["act_words"], loud, rest, line["when"]), "tether": True}


def _item(
    picture: str, lead: Value, act: str, loud: bool = False, rest: Sequence[Value] = (), when: str = ""
) -> Published:
    """One line; `loud` is an act that must not be taken for the usual one."""
    more = listed(part for part in rest if part)
    return {"picture": picture, "lead": lead, "act": act, "loud": loud, "rest": more, "when": when, "tether": False}
