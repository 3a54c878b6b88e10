"""The wiring of a vehicle as its printed sheet wants it: plugs from both sides, pins, ladders and cable runs in ready words."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import groupby

from undertrim.publish.encoding import Published
from undertrim.publish.pictures import plugs as plug_pictures
from undertrim.publish.printed.sheet import frame, glyphs
from undertrim.publish.printed.sheet.frame import Paper
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.publish.printed.sheet.pins import pin
from undertrim.publish.printed.sheet.view import evidence
from undertrim.words import Items, Message, Value, message, say


def view(facts: Published, url: str, paper: Paper, made: date) -> Published:
    """Everything the template of the wiring sheet reads. `made` is the day of printing."""
    pictures = Pictures()
    shown = {
        "plugs": [_plug(entry, pictures) for entry in facts["connectors"]],
        "functions": list(_functions((*facts["functions"], *_disputed_sound(facts)))),
        "duties": [{**entry, "note": " ".join([*entry["conflicts"], entry["note"]])} for entry in facts["duties"]],
        "ladders": [_sourced(entry) for entry in facts["ladders"]],
        "joints": message("with-stock/joints-on-sheet", vehicle=facts["id"]),
        "runs": [_sourced(entry) for entry in facts["runs"]],
        "evidence": _evidence(facts),
    }
    return frame.framed(facts, shown, url, paper, made, pictures)


def _functions(entries: Sequence[Published]) -> Iterator[Published]:
    """Functions that come in the same way, of which the same is noted in the same cars, share a row."""
    rows: dict[tuple[str, ...], list[Published]] = {}
    for entry in entries:
        told = {"by": say(entry["by_words"]), "note": _noted(entry), "when": say(entry["when"])}
        rows.setdefault(tuple(told.values()), []).append(entry)
    for (by, note, when), same in rows.items():
        yield {"name": _listed([entry["name"] for entry in same]), "by_words": by, "note": note, "when": when}


def _disputed_sound(facts: Published) -> Iterator[Published]:
    """What is disputed of the factory sound, as rows beside the functions."""
    for entry in facts.get("sound", []):
        if entry["conflicts"]:
            yield {
                "name": message("sheet/factory-sound", channel=entry["id"]),
                "by_words": message("sheet/disputed"),
                "wire": [],
                "note": "",
                "when": "",
                "conflicts": entry["conflicts"],
            }


def _plug(entry: Published, pictures: Pictures) -> Published:
    drawn = entry["drawn"]
    about = message("plugs/about", size=entry["size"], view=entry["view"])
    more = [
        *(entry[key] for key in ("end", "standard") if entry[key]),
        *_sources(entry, "plugs/source"),
        *entry["conflicts"],
    ]
    return {
        "name": entry["name"],
        "when": entry["when"],
        "about": _listed([about, *more]),
        "told": [_told(asked) for asked in drawn["told_by"]],
        "faces": [_face(face, pictures) for face in drawn["faces"]],
        "legend": _listed(drawn["legend"], "semicolon"),
        "no_face": drawn["no_face"],
        "lost": _listed(drawn["lost"]),
        "pins": [{**pin(item, pictures), "note": _noted(item)} for item in entry["pins"]],
        "expect": list(_expected(entry["expect"])),
        "maps": [_other(item) for item in drawn["maps"]],
    }


def _face(face: Published, pictures: Pictures) -> Published:
    """One face with its width in pixels, so that all are drawn to one scale."""
    return {
        "picture": pictures.keep(plug_pictures.face(glyphs.printable(face))),
        "title": face["title"],
        "width": face["least_width"],
        "words": say(message("plugs/as-recorded") if face["recorded"] else message("plugs/other-side")),
    }


def _other(found: Published) -> Published:
    return {
        "name": found["name"],
        "when": found["when"],
        "warning": found["warning"],
        "lines": [line["words"] for line in found["differences"]],
    }


def _told(asked: Published) -> Published:
    """A question, and by what each answer is known."""
    return {"ask": asked["ask"], "choices": [_choice(choice) for choice in asked["choices"]]}


def _choice(choice: Published) -> str:
    said: Value = choice["label"]
    if choice["tell"]:
        said = message("plugs/choice-tell", choice=said, tell=choice["tell"])
    if choice["built"]:
        said = message("plugs/choice-built", choice=said, built=choice["built"])
    return say(said)


def _expected(pins: Sequence[Published]) -> Iterator[Published]:
    """What a meter should show; contacts of the same readings in the same cars share a row."""
    for (lines, when), same in groupby(_alike(pins), key=_reading):
        found = list(same)
        yield {
            "pins": [{"id": item["id"], "function": item["function_words"]} for item in found],
            "lines": list(lines),
            "when": when,
        }


def _alike(pins: Sequence[Published]) -> list[Published]:
    """Contacts of one reading beside each other, in the order of the first of them."""
    order = list(dict.fromkeys(map(_reading, pins)))
    return sorted(pins, key=lambda item: order.index(_reading(item)))


def _reading(item: Published) -> tuple[tuple[str, ...], str]:
    return (*item["lines"], *item["conflicts"]), str(item["when"])


def _noted(entry: Published) -> str:
    """What is known of a wire, what to doubt about its colour, and the note."""
    doubt = (entry.get("colour") or {}).get("doubt", "")
    *first, last = [
        part
        for part in (*entry.get("conflicts", ()), _listed(entry["wire"], "semicolon"), doubt, entry["note"])
        if part
    ] or [""]
    return "".join([*(f"{part.rstrip('.')}. " for part in first), last])


def _evidence(facts: Published) -> list[Published]:
    """The sources that the sheet names."""
    named = {source for key in ("connectors", "ladders", "runs") for entry in facts[key] for source in entry["source"]}
    return evidence([entry for entry in facts["evidence"] if entry["id"] in named])


def _sourced(entry: Published) -> Published:
    said = map(say, _sources(entry, "plugs/source-begins"))
    return {**entry, "source": " ".join([*said, *entry["conflicts"]])}


def _sources(entry: Published, code: str) -> Iterator[Message]:
    """The evidence of an entry; nothing where it names none."""
    if entry["source"]:
        yield message(code, pieces=Items(tuple(entry["source"]), "comma"))


def _listed(values: Sequence[Value], joined: str = "comma") -> str:
    return say(Items(tuple(values), joined))
