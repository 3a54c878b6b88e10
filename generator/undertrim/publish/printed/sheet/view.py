"""The facts of a vehicle as the template wants them: short rows of ready words, and the drawings."""

from collections.abc import Iterator, Sequence
from datetime import date

from undertrim.derive.procedure.tally import FATES
from undertrim.publish.encoding import Published
from undertrim.publish.facts import spans
from undertrim.publish.pictures import above
from undertrim.publish.printed.sheet import frame, guarded, said_once, steps, way_back
from undertrim.publish.printed.sheet.frame import Paper
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.publish.template_words import bodies, listed, sides
from undertrim.words import Message, Value, message, say


def view(facts: Published, url: str, paper: Paper, made: date) -> Published:
    """Everything the template reads, in the language of the reader. All texts are printable; lists that the facts do not have are empty."""
    pictures = Pictures()
    shown = {
        "about": [{"label": label, "value": value} for label, value in about(facts) if value != ""],
        "variants": [_variant(entry) for entry in facts.get("variants", [])],
        "targets": facts["targets"],
        "blockers": facts.get("blockers", []),
        "restraints": [restraint(entry) for entry in facts.get("restraints", [])],
        "totals": _totals(spans.working(facts["totals"])),
        "openings": [_opening(entry) for entry in facts.get("openings", [])],
        "sections": _sections(facts, pictures),
        "car_picture": _car(facts, pictures),
        "evidence": evidence(facts.get("evidence", [])),
    }
    return frame.framed(facts, shown, url, paper, made, pictures)


def _sections(facts: Published, pictures: Pictures) -> list[Published]:
    """The steps of all jobs, with each thing said once."""
    told = {**facts, "steps": way_back.shortened(facts["steps"])}
    rows = guarded.guarded(list(steps.rows(told, pictures)), told["steps"])
    return steps.in_sections(facts, said_once.told_once(list(rows), told["steps"]))


def _car(facts: Published, pictures: Pictures) -> Published | None:
    """The car from above with all that may be worked at."""
    if "from_above" not in facts:
        return None
    title = say(message("visit-sheet/from-above"))
    return {"title": title, "picture": pictures.keep(above.on_paper(title, facts, {}))}


def _variant(entry: Published) -> Published:
    """A question with its answers; photographs are for the page."""
    answers = [{key: value for key, value in choice.items() if key != "photos"} for choice in entry["choices"]]
    return {**entry, "ask": _with(entry["ask"], entry), "choices": answers}


def about(facts: Published) -> Iterator[tuple[Message, Value]]:
    """What is said of the cars; what the facts do not have is passed over."""
    yield message("sheet/built"), facts["built_words"]
    yield message("sheet/bodies"), bodies(facts["bodies"])
    yield message("vehicle-page/gearbox"), listed(facts["gearboxes"])
    yield message("vehicle-page/engine"), listed(facts["engines"])
    yield message("vehicle-page/trim-level"), listed(facts["trim_levels"])
    yield message("sheet/drive-side"), sides(facts["drive_sides"], "or")
    yield message("vehicle-page/also-called"), listed(facts["also_called"])
    yield message("vehicle-page/vin"), listed([_vin(one) for one in facts["vin"]])
    yield message("vehicle-page/how-to-tell"), facts["tell"]
    yield message("vehicle-page/before-it"), facts["follows_words"]
    yield message("vehicle-page/changed"), facts["changed"]
    yield message("sheet/language"), facts["lang_words"]
    yield message("sheet/checked"), _standing(facts["standing"]) if "standing" in facts else ""
    yield message("sheet/data"), _age(facts) if "age" in facts else ""
    yield message("sheet/conflict"), listed(facts.get("disputed", []), "spaced")


def _vin(one: Published) -> Value:
    return message("sheet/vin", pattern=one["pattern"], cars=one["when"]) if one["when"] else str(one["pattern"])


def _standing(standing: Published) -> Value:
    """Whether somebody checked the record at the car, and if not, how much is in the way."""
    open_points, text = len(standing["obstacles"]), str(standing["text"])
    return message("sheet/standing-open", standing=text, count=open_points) if open_points else text


def _age(facts: Published) -> Value:
    """The date of the newest evidence with its age when the sheet was made."""
    date_, words = facts["data_date"], facts["age"]["words"]
    return message("sheet/aged", date=date_, age=words) if date_ and words else ""


def evidence(entries: Sequence[Published]) -> list[Published]:
    """The looks at cars, each in a line. What rests on it stands on the page: here each fact names its source."""
    keys = ("how_words", "on", "by", "car", "with", "note")
    return [
        {"id": entry["id"], "words": listed([entry[key] for key in keys if entry[key]], "semicolon")}
        for entry in entries
    ]


def restraint(entry: Published) -> str:
    """The airbags and belt parts of an area."""
    area = message(f"areas/{entry['area']}")
    said = message("sheet/restraint", area=area, things=listed(entry["items"]))
    return listed([said, *entry.get("conflicts", [])], "spaced")


def _with(text: str, entry: Published) -> str:
    """A text, and what is disputed of what it says."""
    return listed([part for part in (text, *entry.get("conflicts", [])) if part], "spaced")


def added(each: Sequence[Published]) -> Published:
    """Tools, fasteners in columns with their sums, what is to buy, and the time; of several kinds of car the least and the most."""
    counted = spans.rows(each)
    columns = [*FATES, *(["unrecorded"] if any(row.unrecorded for row in counted) else [])]
    return {
        "tools": [_some(listed([tool.name, *tool.instead], "either"), tool) for tool in spans.tools(each)],
        "columns": [message(f"sheet/fate-{name}") for name in columns],
        "rows": [{"sort": row.sort, "counts": [*row.counts, row.unrecorded][: len(columns)]} for row in counted],
        "sums": spans.sums(each)[: len(columns)] if counted else [],
        "buy": [message("sheet/buy", number=one.number, what=one.name, parts=one.part) for one in spans.bought(each)],
        "time": spans.time(each),
    }


def _totals(each: Sequence[Published]) -> Published:
    """The same for all jobs at once, fasteners in a word each: a visit does not have these numbers, and its own sheet counts."""
    found = added(each)
    return {**found, "counted": [_counted(row, found["columns"]) for row in found["rows"]]}


def _counted(row: Published, fates: Sequence[Value]) -> Value:
    """`18 × snap-in clip (14 back, 4 bagged)`; nothing in brackets where all go back."""
    out, back, *others = row["counts"]
    words = message("sheet/counted", number=out, sort=row["sort"])
    if back == out and not any(others):
        return words
    told = [
        message("sheet/fated", number=count, fate=fate)
        for count, fate in zip(row["counts"][1:], fates[1:], strict=True)
        if count
    ]
    return message("sheet/counted-apart", counted=words, fates=listed(told))


def _some(tool: Value, needed: spans.SpannedNeed) -> Value:
    return message("sheet/in-some-cars", what=tool) if needed.some else tool


def _opening(entry: Published) -> Published:
    name = entry["name"]
    return {
        "name": message("sheet/on-sides", name=name, sides=sides(entry["sides"])) if entry["sides"] else name,
        "when": entry["when"],
        "rows": [
            *({"label": row["label"], "value": row["value"]} for row in entry["rows"]),
            *({"label": message("sheet/conflict"), "value": words} for words in entry.get("conflicts", [])),
        ],
        "source": listed(entry["source"]),
        "limits": _limits(entry.get("limits", [])),
    }


def _limits(entries: Sequence[Published]) -> list[Published]:
    """What an opening takes, in the cars of each answer; once for all where they are the same."""
    told = [_limit(found) for found in entries]
    same = len(told) > 1 and all({**each, "when": ""} == {**told[0], "when": ""} for each in told)
    return [{**told[0], "when": ""}] if same else told


def _limit(found: Published) -> Published:
    takes = listed(found["takes"], "semicolon") if found["there"] else message("sheet/not-in-these-cars")
    return {"when": found["cars_words"], "closed": found["closed"], "takes": takes}
