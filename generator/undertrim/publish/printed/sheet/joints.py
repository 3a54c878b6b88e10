"""Joint tables as a printed sheet wants them: a block of rows for each state, what most of them need said once above."""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import groupby

from undertrim.publish.encoding import Published
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.publish.printed.sheet.pins import colour_words
from undertrim.words import Items, Value, message, say


def joint(entry: Published, pictures: Pictures) -> Published:
    """The tables of one lead set."""
    return {
        "name": entry["name"],
        "opening": entry["opening_name"],
        "note": entry["note"],
        "tables": [_table(table, pictures) for table in entry["tables"]],
    }


def _table(table: Published, pictures: Pictures) -> Published:
    contacts = table["contacts"]
    return {
        "cars": table["cars_words"],
        "harness": table["harness"]["name"] if table["harness"] else say(message("joint/hand-only")),
        "between": _listed([item["name"] for item in table["between"]]),
        "wants": table["sound_words"],
        "counts": table["counts_words"],
        "notes": table["notes"],
        "extra": _listed([_at(item, item["words"]) for item in contacts["extra"]], "semicolon"),
        "missing": _listed([_at(item, item["function_words"]) for item in contacts["missing"]], "semicolon"),
        "blocks": [
            _block(list(rows), table["harness"], pictures)
            for _, rows in groupby(table["rows"], key=lambda row: str(row["state"]))
        ],
    }


def _at(contact: Published, what: str) -> Value:
    return message("joint/contact-what", at=contact["address"], what=what)


def _listed(values: Sequence[Value], joined: str = "comma") -> str:
    return say(Items(tuple(values), joined))


def _block(rows: Sequence[Published], harness: Published | None, pictures: Pictures) -> Published:
    """The rows of one state."""
    (usual, count), *_ = Counter(row["do"] for row in rows).most_common(1)
    common = str(usual) if count > 1 else ""
    most = say(message("joint/most", do=common)) if common and count < len(rows) else common
    return {
        "sign": rows[0]["sign"],
        "title": say(message("joint/block", state=rows[0]["state_words"], number=len(rows))),
        "loud": rows[0]["state"] == "never",
        "do": most,
        "rows": [_row(row, common, harness, pictures) for row in rows],
    }


def _row(row: Published, common: str, harness: Published | None, pictures: Pictures) -> Published:
    return {
        "function": row["function_words"],
        "car": [_wire(point["address"] or point["words"], point, pictures) for point in row["car"]],
        "adapter": [_wire(_contact(contact, harness), contact, pictures) for contact in row["contacts"]]
        or ([_named(row["through"])] if row["through"] else []),
        "lead": [_wire(row["lead"]["id"], row["lead"], pictures)] if row["lead"] else [],
        "why": _listed([*(reason["words"] for reason in row["reasons"]), *row["words"], *row["notes"]], "semicolon"),
        "do": "" if row["do"] == common else row["do"],
    }


def _contact(contact: Published, harness: Published | None) -> str:
    """The address of a contact, and whose it is where beside the harness something else has contacts."""
    own = harness is None or contact["gear"] == harness["id"]
    if own:
        return str(contact["address"])
    return say(message("joint/gear-at", gear=contact["gear_name"], at=contact["address"]))


def _named(name: str) -> Published:
    return {"name": name, "picture": "", "words": ""}


def _wire(name: str, item: Published, pictures: Pictures) -> Published:
    """One end: its address or name, its colour where there is a wire to look at, and what else counts there."""
    colour = item["colour"]
    to_see = item.get("address", "a lead")
    said = colour_words(colour) if colour else message("plugs/colour-unknown") if to_see else ""
    return {
        "name": name,
        "picture": pictures.wire(colour) if colour else "",
        "words": _listed([part for part in (said, *_more(item)) if part]),
    }


def _more(item: Published) -> Iterator[Value]:
    if item.get("level") == "line":
        yield message("levels/line")
    if item.get("fuse"):
        yield message("joint/fuse", rating=item["fuse"])
    if item.get("gauge"):
        yield item["gauge"].replace("mm2", "mm²")
    if item.get("supply"):
        yield str(item["supply"])
