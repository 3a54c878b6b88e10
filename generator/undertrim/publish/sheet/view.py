"""The facts of a vehicle as the template wants them: short rows of ready words, and the drawings."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from undertrim.publish.facts import duties
from undertrim.publish.sheet import frame, steps
from undertrim.publish.sheet.frame import Paper
from undertrim.publish.sheet.pictures import Pictures
from undertrim.publish.sheet.pins import pin

Data = Mapping[str, Any]

FATES = ("out", "back", "moved", "bagged", "new")


def view(facts: Data, url: str, paper: Paper, made: date) -> dict[str, Any]:
    """Everything the template reads. All texts are printable; lists that the facts do not have are empty."""
    pictures = Pictures()
    shown = {
        "about": [{"label": label, "value": value} for label, value in _about(facts) if value],
        "variants": [{**entry, "ask": _with(entry["ask"], entry)} for entry in facts.get("variants", [])],
        "targets": facts["targets"],
        "blockers": facts.get("blockers", []),
        "restraints": [_restraint(entry) for entry in facts.get("restraints", [])],
        "totals": _totals(facts["totals"]),
        "openings": [_opening(entry) for entry in facts.get("openings", [])],
        "fits": [
            {**_fit(entry, found), "drawings": pictures.openings(entry.get("drawn", {})) if first == 0 else []}
            for entry in facts.get("openings", [])
            for first, found in enumerate(entry.get("fit", []))
        ],
        "sections": steps.sections(facts, pictures),
        "connectors": [_connector(entry, pictures) for entry in facts.get("connectors", [])],
        "functions": [
            {**entry, "note": _with(entry["note"], entry)}
            for entry in (*facts.get("functions", []), *disputed_sound(facts))
        ],
        "duties": [{**entry, "note": _with(entry["note"], entry)} for entry in facts.get("duties", [])],
        "evidence": facts.get("evidence", []),
    }
    return frame.framed(facts, shown, url, paper, made, pictures)


def disputed_sound(facts: Data) -> Iterator[Data]:
    """What is disputed of the factory sound, as rows beside the functions."""
    for entry in facts.get("sound", []):
        if entry["conflicts"]:
            yield {
                "name": f"Factory sound, {entry['id']}",
                "by_words": "disputed: meter it",
                "wire": [],
                "note": "",
                "when": "",
                "conflicts": entry["conflicts"],
            }


def _about(facts: Data) -> Iterator[tuple[str, str]]:
    yield "Built", facts["built_words"]
    yield "Bodies", ", ".join(facts["bodies"])
    yield "Drive side", " or ".join(facts["drive_sides"])
    yield "Also called", ", ".join(facts["also_called"])
    yield "How to tell", facts["tell"]
    yield "Before it", facts["follows_words"]
    yield "Changed", facts["changed"]
    yield "Checked", _standing(facts["standing"])
    yield "Data", _age(facts)
    yield "Conflict", " ".join(facts.get("disputed", []))


def _standing(standing: Data) -> str:
    """Whether somebody checked the record at the car, and if not, how much is in the way."""
    open_points = len(standing["obstacles"])
    way = f" ({open_points} safety question{'' if open_points == 1 else 's'} open)" if open_points else ""
    return f"{standing['text']}{way}"


def _age(facts: Data) -> str:
    """The date of the newest evidence with its age when the sheet was made."""
    words = facts["age"]["words"]
    return f"of {facts['data_date']}, {words}" if facts["data_date"] and words else ""


def _restraint(entry: Data) -> str:
    return f"{entry['area'].replace('-', ' ').capitalize()}: {', '.join(entry['items'])}.{''.join(f' {words}' for words in entry.get('conflicts', []))}"


def _with(text: str, entry: Data) -> str:
    """A text, and what is disputed of what it says."""
    return " ".join(part for part in (text, *entry.get("conflicts", [])) if part)


def _totals(totals: Data) -> dict[str, Any]:
    counted = totals["fasteners"]
    columns = [*FATES, *(["unrecorded"] if any(row.get("unrecorded") for row in counted) else [])]
    rows = [{"sort": row["sort"], "counts": [row.get(fate, 0) for fate in columns]} for row in counted]
    return {
        "tools": [" or ".join([tool["name"], *tool["instead"]]) for tool in totals["tools"]],
        "columns": ["not recorded" if name == "unrecorded" else name for name in columns],
        "rows": rows,
        "sums": [sum(column) for column in zip(*(row["counts"] for row in rows), strict=True)],
        "buy": list(_purchases(totals["buy"])),
        "time": totals["time_text"],
    }


def _purchases(buy: Sequence[Data]) -> Iterator[str]:
    """One line for each thing: how many in all, and where they go."""
    for what in dict.fromkeys(entry["what"] for entry in buy):
        same = [entry for entry in buy if entry["what"] == what]
        parts = "; ".join(dict.fromkeys(entry["part"] for entry in same))
        yield f"{_sum([entry['count'] for entry in same])} × {what} ({parts})"


def _sum(counts: Sequence[int | None]) -> str:
    """The sum, and how it ends where a count is not recorded: `4 and more`, `unknown number`."""
    known = sum(count for count in counts if count is not None)
    if None in counts:
        return f"{known} and more" if known else "unknown number"
    return str(known)


def _opening(entry: Data) -> dict[str, Any]:
    sides = " and ".join(entry["sides"])
    return {
        "name": f"{entry['name']}, {sides}" if sides else entry["name"],
        "when": entry["when"],
        "rows": [*entry["rows"], *({"label": "Conflict", "value": words} for words in entry.get("conflicts", []))],
        "source": ", ".join(entry["source"]),
    }


def _fit(entry: Data, found: Data) -> dict[str, Any]:
    """What of the stock fits an opening, in the cars of one answer."""
    return {
        "name": entry["name"],
        "when": found["cars_words"],
        "closed": found["closed"],
        "takes": "; ".join(found["takes"]) if found["there"] else "not there in these cars",
        "stock": found["counts_words"] or f"no {entry['kind']} in stock",
        "notes": [*map(duties.line, found["duties"]), *found["notes"]],
        "rows": [
            {
                "verdict": fit["verdict_words"],
                "plain": fit["verdict"] != "does-not-fit",
                "gear": fit["name"],
                "words": _reason(fit),
            }
            for fit in found["fits"]
        ],
    }


def _reason(fit: Data) -> str:
    """What a verdict says beyond its word, and what is not simply on a wire."""
    open_needs = [f"{need['name']}: {need['words']}" for need in fit["functions"] if need["by"] != "wire"]
    nearest = f"nearest in stock that fits: {fit['nearest_name']}" if fit["nearest"] else ""
    about = [] if fit["verdict"] == "does-not-fit" else [words.rstrip(".") for words in fit["about"]]
    said = "; ".join(part for part in (fit["reason"], *open_needs, *fit["notes"], *about, nearest) if part)
    return said[:1].upper() + said[1:]


def _connector(entry: Data, pictures: Pictures) -> dict[str, Any]:
    drawn = [
        f"{entry['size']} contacts" if entry["size"] else "",
        f"drawn {entry['view']}",
        entry["standard"],
    ]
    source = ", ".join(entry["source"])
    return {
        "name": entry["name"],
        "when": entry["when"],
        "about": _with(", ".join(part for part in (*drawn, f"source {source}" if source else "") if part), entry),
        "pins": [pin(item, pictures) for item in entry["pins"]],
    }
