"""Steps as rows of a printed list: number, marks of the jobs, state where it changes, one line for each fastener and tether."""

from collections.abc import Iterator, Mapping
from itertools import groupby
from typing import Any

from undertrim.publish.facts import words
from undertrim.publish.sheet import combined
from undertrim.publish.sheet.pictures import Pictures

Data = Mapping[str, Any]
Row = dict[str, Any]

_TALL = 1500
"""Characters in a step from which it may break over pages, since it might not fit on one."""


def sections(facts: Data, pictures: Pictures) -> list[Row]:
    """Runs of steps of one section in their order; a section that comes again is `continued`."""
    titles = {section["id"]: section["title"] for section in facts["sections"]}
    seen: set[str] = set()
    found: list[Row] = []
    for name, group in groupby(_rows(facts, pictures), key=lambda row: row["section"]):
        title = titles.get(name, name)
        found.append({"title": f"{title}, continued" if name in seen else title, "steps": list(group)})
        seen.add(name)
    return found


def _rows(facts: Data, pictures: Pictures) -> Iterator[Row]:
    marks = {target["id"]: target["mark"] for target in facts["targets"]}
    together = combined.notes(facts)
    before = ""
    for place, step in enumerate(facts["steps"]):
        state = step.get("state_words", "")
        yield {
            **_row(step, pictures),
            "number": place + 1,
            "marks": _marks(step, marks),
            "conditions": [words for words in (step["when"].strip(" ,"), together.get(place, "")) if words],
            "state": state if state != before else "",
        }
        before = state


def _row(step: Data, pictures: Pictures) -> Row:
    items = [*_motion(step), *(_fastener(line, pictures) for line in step["fasteners"]), *_tethers(step, pictures)]
    row = {
        "section": step["section"],
        "verb": step["verb"],
        "title": step["title"],
        "side": "" if not step["side"] or step["title"].endswith(step["side"]) else step["side"],
        "text": list(step["text"]),
        "items": sorted(items, key=lambda item: item["rank"]),
        "cautions": list(step["cautions"]),
        "wait": step["wait"]["text"] if step["wait"] else "",
        "time": words.minutes(step["minutes"]) if step["minutes"] is not None else "",
        "source": ", ".join(step.get("source", [])),
    }
    return {**row, "tall": _length(row) > _TALL}


def _length(value: object) -> int:
    if isinstance(value, dict):
        return sum(map(_length, value.values()))
    if isinstance(value, list):
        return sum(map(_length, value))
    return len(value) if isinstance(value, str) else 0


def _marks(step: Data, marks: Mapping[str, str]) -> str:
    if not step["targets"]:
        return "in no job"
    if len(step["targets"]) == len(marks) > 1:
        return "all"
    return ", ".join(marks[target] for target in step["targets"])


def _motion(step: Data) -> Iterator[Row]:
    if step["motion"]:
        yield {"rank": 1, "picture": "", "lead": step["motion"].capitalize(), "act": "", "loud": False, "rest": ""}


def _fastener(line: Data, pictures: Pictures) -> Row:
    rest = [line["detail"], f"under: {line['hidden_by']}" if line["hidden_by"] else ""]
    return {
        "rank": 0,
        "picture": pictures.fastener(line),
        "lead": line["text"],
        "act": line["fate_words"],
        "loud": line["fate"] in ("leave", "new", "bagged", "moved"),
        "rest": _rest([*rest, "single use" if line["single_use"] and line["fate"] == "out" else ""], line["when"]),
    }


def _tethers(step: Data, pictures: Pictures) -> Iterator[Row]:
    for line in step["tethers"]:
        airbag = "airbag or belt wiring" if line["restraint"] else ""
        yield {
            "rank": 2,
            "picture": pictures.tether(line["kind"]),
            "lead": line["name"],
            "act": line["act_words"],
            "loud": line["act"] not in ("undo", "rejoin"),
            "rest": _rest([airbag, line["how"]], line["when"]),
        }


def _rest(parts: list[str], condition: str) -> str:
    said = ", ".join(part for part in parts if part)
    return f"{said} [{condition}]".strip() if condition else said
