"""Wiring as text for a terminal: the plugs pin by pin, or a joint table that is worked down, exceptions first."""

import textwrap
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby, zip_longest
from typing import Any

from undertrim.publish.facts.car_wiring import SOURCES

Data = Mapping[str, Any]
WIDTH = 100
_COLUMNS = (20, 22, 22, 24)  # function, lead, adapter, car; with gaps of two and the box before them they fill WIDTH
_SOLID = {" ": "\N{NO-BREAK SPACE}", "-": "\N{NON-BREAKING HYPHEN}"}
_CLOSING = (
    "A colour is a hint and the meter decides: meter both ends before they are joined.",
    "The maker's information, local codes and licensed practice come first.",
)


def joint_text(data: Data) -> str:
    """Joint tables as text, ending in a newline."""
    lines = [line for table in data["tables"] for line in _table(table)]
    return "\n".join([*_head(data, f"joint with {data['gear_name']}"), *lines, "", *_CLOSING, ""])


def plugs_text(data: Data) -> str:
    """The factory plugs pin by pin and the functions by source as text, ending in a newline."""
    lines = [line for plug in data["plugs"] for line in _plug(plug)]
    return "\n".join([*_head(data, "wiring"), *lines, *_functions(data), *_sound(data), "", *_CLOSING, ""])


def _head(data: Data, what: str) -> Iterator[str]:
    yield f"{data['title']} ({data['vehicle']}): {what}"
    if data["demo"]:
        yield "Demonstration data: this vehicle is invented."


def _table(table: Data) -> Iterator[str]:
    yield ""
    yield from _wrapped(_cars(table), "", "  ")
    harness = table["harness"]
    yield from _wrapped(f"harness: {harness['name'] if harness else 'none'}", "  ", "    ")
    for item in table["between"]:
        yield from _wrapped(f"{item['kind']}: {item['name']}", "  ", "    ")
    yield f"  the car wants on its sound wires: {table['sound_words']}"
    for note in table["notes"]:
        yield from _wrapped(note, "  note: ", "        ")
    yield from _contacts(table["contacts"])
    for _, rows in groupby(table["rows"], key=lambda row: row["state"]):
        yield from _block(list(rows))


def _cars(table: Data) -> str:
    return f"For: {table['cars_words']}" if table["cars_words"] else "In every car asked for:"


def _contacts(found: Data) -> Iterator[str]:
    for extra in found["extra"]:
        what = f"extra contact {extra['address']} ({extra['function_words']}) of {extra['gear_name']}"
        yield from _wrapped(f"{what}: {extra['words']}", "  ", "    ")
    if found["missing"]:
        names = ", ".join(f"{point['address']} ({point['function_words']})" for point in found["missing"])
        yield from _wrapped(f"contacts of the car that no adapter has: {names}", "  ", "    ")


def _block(rows: Sequence[Data]) -> Iterator[str]:
    """The rows of one state. What is to be done with most of them is said once, above."""
    (usual, count), *_ = Counter(row["do"] for row in rows).most_common(1)
    common = usual if count > 1 else ""
    yield ""
    head = f"{rows[0]['state_words']} ({len(rows)})"
    yield from _wrapped(f"{head}: {common}{'' if count == len(rows) else ', if not said otherwise'}" if common else head, "  ", "    ")  # fmt: skip
    yield _line("   ", ("function", "lead", "adapter", "car"))
    for row in rows:
        yield from _row(row, common)


def _row(row: Data, common: str) -> Iterator[str]:
    cells = (row["function_words"], _lead(row["lead"]), _adapter(row), " and ".join(map(_point, row["car"])) or "-")
    columns = [_folded(text, width) for text, width in zip(cells, _COLUMNS, strict=True)]
    for number, parts in enumerate(zip_longest(*columns, fillvalue="")):
        yield _line("   " if number else "[ ]", parts)
    said = [*(f"{reason['words']} ({reason['name']})" for reason in row["reasons"]), *row["words"], *_notes(row)]
    for words in said:
        yield from _wrapped(words, "      - ", "        ")
    if row["do"] and row["do"] != common:
        yield from _wrapped(row["do"], "      > ", "        ")


def _line(box: str, parts: Sequence[str]) -> str:
    cells = "  ".join(f"{text:{width}}" for text, width in zip(parts, _COLUMNS, strict=True))
    return f"  {box} {cells}".rstrip()


def _lead(lead: Data | None) -> str:
    if lead is None:
        return "-"
    level = f", {lead['level']} level" if lead["level"] == "line" else ""
    fuse = f", fuse {_solid(lead['fuse'])}" if lead["fuse"] else ""
    gauge = f", {_solid(lead['gauge'].replace('mm2', 'mm²'))}" if lead["gauge"] else ""
    return f"{lead['id']}: {_colour(lead)}{level}{fuse}{gauge}"


def _adapter(row: Data) -> str:
    if not row["contacts"]:
        return row["through"] or "-"
    return " and ".join(f"{_solid(contact['address'])}: {_colour(contact)}" for contact in row["contacts"])


def _point(point: Data) -> str:
    if not point["address"]:
        return str(point["words"])
    behaves = f", {_solid(point['behaves'])}" if point["behaves"] else ""
    supply = f", {_solid(_volts(point['supply']))}" if point["supply"] else ""
    return f"{_solid(point['address'])}: {_colour(point)}{behaves}{supply}"


def _volts(supply: str) -> str:
    return "voltage unknown" if supply == "unknown" else supply


def _notes(row: Data) -> Iterator[str]:
    yield from (f"car: {point['note']}" for point in row["car"] if point["note"])
    if row["lead"] and row["lead"]["note"]:
        yield f"lead: {row['lead']['note']}"


def _colour(thing: Data) -> str:
    return str(thing["colour"]["words"]) if thing["colour"] else "colour not recorded"


def _plug(plug: Data) -> Iterator[str]:
    yield ""
    yield from _wrapped(f"{plug['name']} ({plug['id']}){_when(plug)}", "", "  ")
    for pin in plug["pins"]:
        yield from _wrapped(f"{pin['address']:18} {pin['function_words']:20} {_pin(pin)}", "  ", " " * 23)
        yield from _doubts(pin)
    yield from _doubts(plug)
    if plug["blanks"]:
        yield from _wrapped(f"looked at and empty: {', '.join(plug['blanks'])}", "  ", "    ")


def _pin(pin: Data) -> str:
    parts = [
        _colour(pin),
        pin["behaves"],
        _volts(pin["supply"]),
        f"draws {pin['draws']}" if pin["draws"] else "",
        f"fuse {pin['fuse']}" if pin["fuse"] else "",
        pin["gauge"],
        "metered" if pin["metered"] else "",
    ]
    said = ", ".join(part for part in parts if part)
    return f"{said}{_when(pin)}{'. ' + pin['note'] if pin['note'] else ''}"


def _functions(data: Data) -> Iterator[str]:
    for by, title in SOURCES.items():
        listed = [item for item in data["functions"] if item["by"] == by]
        if listed:
            yield ""
            yield f"{title}:"
        for item in listed:
            where = f" {item['address']}" if item["address"] else ""
            note = f": {item['note']}" if item["note"] else ""
            yield from _wrapped(f"{item['function_words']}{where}{_when(item)}{note}", "  ", "    ")
            yield from _doubts(item)


def _sound(data: Data) -> Iterator[str]:
    if data["sound"]:
        yield ""
    for system in data["sound"]:
        place = f"; factory amplifier: {system['amplifier']}" if system["amplifier"] else ""
        yield from _wrapped(f"Sound{_when(system)}: {system['output'].replace('-', ' ')}{place}", "", "  ")
        yield from _doubts(system)


def _doubts(thing: Data) -> Iterator[str]:
    for words in thing["conflicts"]:
        yield from _wrapped(words, "    ! ", "      ")


def _when(thing: Data) -> str:
    return f" [{thing['when']}]" if thing["when"] else ""


def _solid(text: str) -> str:
    """A value that no cell is to break."""
    return "".join(_SOLID.get(sign, sign) for sign in text)


def _folded(text: str, width: int) -> list[str]:
    lines = textwrap.wrap(text, width, break_on_hyphens=True) or [""]
    plain = str.maketrans({solid: sign for sign, solid in _SOLID.items()})
    return [line.translate(plain) for line in lines]


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )
