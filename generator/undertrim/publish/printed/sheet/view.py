"""The facts of a vehicle as the template wants them: short rows of ready words, and the drawings."""

from collections.abc import Iterator, Sequence
from datetime import date

from undertrim.derive.procedure.tally import FATES
from undertrim.publish.encoding import Published
from undertrim.publish.facts import spans
from undertrim.publish.pictures import above, order
from undertrim.publish.pictures.openings import IN_DEPTH
from undertrim.publish.printed.sheet import frame, glyphs, other_side, steps
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
        "totals": added(spans.working(facts["totals"])),
        "openings": [_opening(entry, pictures) for entry in facts.get("openings", [])],
        "sections": other_side.told_once(steps.sections(facts, pictures), facts["steps"]),
        "order": list(_order(facts, pictures)),
        "car_picture": _car(facts, pictures),
        "duties": [{**entry, "note": _with(entry["note"], entry)} for entry in facts.get("duties", [])],
        "evidence": [evidence(entry) for entry in facts.get("evidence", [])],
    }
    return frame.framed(facts, shown, url, paper, made, pictures)


def _order(facts: Published, pictures: Pictures) -> Iterator[Published]:
    """What hides what, in groups of parts that hang together."""
    title = say(message("drawings/what-hides-what"))
    for drawn, wide in order.on_paper(glyphs.printable(facts.get("removal_order", [])), title):
        yield {"picture": pictures.keep(drawn), "width": wide, "title": title}


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


def evidence(entry: Published) -> Published:
    """A look at a car, with what rests on it in one text."""
    return {**entry, "facts": listed(entry["facts"], "semicolon")}


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


def _some(tool: Value, needed: spans.SpannedNeed) -> Value:
    return message("sheet/in-some-cars", what=tool) if needed.some else tool


def _opening(entry: Published, pictures: Pictures) -> Published:
    name = entry["name"]
    drawn = {key: made for key, made in entry.get("drawn", {}).items() if key in IN_DEPTH}
    return {
        "name": message("sheet/on-sides", name=name, sides=sides(entry["sides"])) if entry["sides"] else name,
        "when": entry["when"],
        "rows": [
            *({"label": row["label"], "value": row["value"]} for row in entry["rows"]),
            *({"label": message("sheet/conflict"), "value": words} for words in entry.get("conflicts", [])),
        ],
        "source": listed(entry["source"]),
        "limits": _limits(entry.get("limits", [])),
        "drawings": pictures.openings(drawn),
    }


def _limits(entries: Sequence[Published]) -> list[Published]:
    """What an opening takes, in the cars of each answer; once for all where they are the same."""
    told = [_limit(found) for found in entries]
    same = len(told) > 1 and all({**each, "when": ""} == {**told[0], "when": ""} for each in told)
    return [{**told[0], "when": ""}] if same else told


def _limit(found: Published) -> Published:
    takes = listed(found["takes"], "semicolon") if found["there"] else message("sheet/not-in-these-cars")
    return {"when": found["cars_words"], "closed": found["closed"], "takes": takes}
