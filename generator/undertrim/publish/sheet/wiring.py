"""The wiring of a vehicle as its printed sheet wants it: plugs from both sides, pins, joints, ladders and cable runs in ready words."""

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

from undertrim.publish import plug_pictures
from undertrim.publish.sheet import frame
from undertrim.publish.sheet.frame import Paper
from undertrim.publish.sheet.pictures import Pictures

Data = Mapping[str, Any]
Row = dict[str, Any]

_SIGNS = {"never": "×", "interface": "+", "lead-alone": "–", "pin-alone": "–", "unknown": "?", "other-colour": "≠", "joined": "✓"}  # fmt: skip


def view(facts: Data, url: str, paper: Paper, made: date) -> dict[str, Any]:
    """Everything the template of the wiring sheet reads."""
    pictures = Pictures()
    shown = {
        "plugs": [_plug(entry, pictures) for entry in facts["connectors"]],
        "functions": [_function(entry) for entry in facts["functions"]],
        "duties": facts["duties"],
        "ladders": facts["ladders"],
        "joints": [_joint(entry, pictures) for entry in facts["joints"]],
        "runs": facts["runs"],
    }
    return frame.framed(facts, shown, url, paper, made, pictures)


def _plug(entry: Data, pictures: Pictures) -> Row:
    drawn = entry["drawn"]
    about = [f"{entry['size']} contacts", f"recorded {entry['view']}", entry["standard"]]
    return {
        "name": entry["name"],
        "when": entry["when"],
        "about": ", ".join(part for part in (*about, _sources(entry)) if part),
        "told": list(_told(drawn["told_by"])),
        "faces": [{"picture": pictures.keep(face["title"], plug_pictures.face(face)), "title": face["title"]} for face in drawn["faces"]],
        "legend": "; ".join(drawn["legend"]),
        "no_face": drawn["no_face"],
        "pins": [_pin(pin, pictures) for pin in entry["pins"]],
        "expect": [
            {"id": pin["id"], "function": pin["function_words"], "when": pin["when"], "reading": ". ".join(pin["lines"])}
            for pin in entry["expect"]
        ],
        "maps": [
            {"name": other["name"], "when": other["when"], "lines": [line["words"] for line in other["differences"]]}
            for other in drawn["maps"]
        ],
    }  # fmt: skip


def _told(asked: Any) -> Iterator[str]:
    for entry in asked:
        choices = [
            "".join((choice["label"], f": {choice['tell']}" if choice["tell"] else "", f" ({choice['built']})" if choice["built"] else ""))
            for choice in entry["choices"]
        ]  # fmt: skip
        yield f"{entry['ask']} {'; '.join(choices)}"


def _pin(pin: Data, pictures: Pictures) -> Row:
    colour = pin["colour"]
    said = "; ".join(pin["wire"])
    return {
        "id": pin["id"],
        "picture": pictures.wire(colour) if colour else "",
        "colour": colour["words"] if colour else "not recorded",
        "iec": colour["iec"] if colour else "",
        "function": pin["function_words"],
        "note": f"{said}. {pin['note']}" if said and pin["note"] else said or pin["note"],
        "when": pin["when"],
    }


def _function(entry: Data) -> Row:
    said = "; ".join(entry["wire"])
    note = f"{said}. {entry['note']}" if said and entry["note"] else said or entry["note"]
    return {"name": entry["name"], "by_words": entry["by_words"], "note": note, "when": entry["when"]}


def _joint(entry: Data, pictures: Pictures) -> Row:
    return {
        "name": entry["name"],
        "opening": entry["opening_name"],
        "receivers": ", ".join(entry["receivers"]),
        "note": entry["note"],
        "tables": [_table(table, pictures) for table in entry["tables"]],
    }


def _table(table: Data, pictures: Pictures) -> Row:
    contacts = table["contacts"]
    return {
        "cars": table["cars_words"],
        "harness": table["harness"]["name"] if table["harness"] else "none in stock suits: by hand",
        "between": ", ".join(item["name"] for item in table["between"]),
        "wants": table["sound_words"],
        "counts": table["counts_words"],
        "notes": table["notes"],
        "extra": "; ".join(f"{item['address']} ({item['words']})" for item in contacts["extra"]),
        "missing": "; ".join(f"{item['address']} ({item['function_words']})" for item in contacts["missing"]),
        "rows": [_row(row, pictures) for row in table["rows"]],
    }


def _row(row: Data, pictures: Pictures) -> Row:
    lead = row["lead"]
    level = f"{lead['level']} level" if lead and lead["level"] else ""
    why = [f"{reason['words']}." for reason in row["reasons"]]
    words = "; ".join(row["words"])
    return {
        "state": f"{_SIGNS[row['state']]} {row['state_words']}",
        "loud": row["state"] == "never",
        "function": row["function_words"],
        "car": [_wired(point, " ".join((point["address"], point["words"])).strip(), pictures) for point in row["car"]],
        "harness": [_wired(contact, contact["address"], pictures) for contact in row["contacts"]],
        "lead": [_wired(lead, level, pictures)] if lead else [],
        "why": " ".join([*why, f"{words}{':' if row['do'] else ''}" if words else ""]).strip(),
        "do": row["do"],
    }


def _wired(item: Data, words: str, pictures: Pictures) -> Row:
    colour = item["colour"]
    return {
        "picture": pictures.wire(colour) if colour else "",
        "words": ", ".join(part for part in (words, colour["words"] if colour else "") if part),
    }


def _sources(entry: Data) -> str:
    return f"source {', '.join(entry['source'])}" if entry["source"] else ""
