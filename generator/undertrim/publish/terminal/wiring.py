"""Wiring as text for a terminal: the plugs pin by pin, or a joint table that is worked down, exceptions first."""

import textwrap
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import groupby, zip_longest

from undertrim.publish.encoding import Published
from undertrim.publish.facts.car_wiring import SOURCES
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Items, Message, Value, all_of, message, say

_COLUMNS = (20, 22, 22, 24)  # function, lead, adapter, car; with gaps of two and the box before them they fill WIDTH
_SOLID = {" ": "\N{NO-BREAK SPACE}", "-": "\N{NON-BREAKING HYPHEN}"}


def joint_text(data: Published) -> str:
    """Joint tables as text, ending in a newline."""
    lines = [line for table in data["tables"] for line in _table(table)]
    head = message("joint/with-gear", car=data["title"], address=data["vehicle"], gear=data["gear_name"])
    return "\n".join([*_head(data, head), *lines, "", *_closing(), ""])


def plugs_text(data: Published) -> str:
    """The factory plugs pin by pin and the functions by source as text, ending in a newline."""
    lines = [line for plug in data["plugs"] for line in _plug(plug)]
    head = message("plugs/wiring", car=data["title"], address=data["vehicle"])
    return "\n".join([*_head(data, head), *lines, *_functions(data), *_sound(data), "", *_closing(), ""])


def _head(data: Published, title: Message) -> Iterator[str]:
    yield say(title)
    if data["demo"]:
        yield say(message("vehicle-page/demo"))


def _closing() -> Iterator[str]:
    yield say(message("plugs/colour-decides"))
    yield closing()


def _table(table: Published) -> Iterator[str]:
    yield ""
    yield from wrapped(_cars(table), "", "  ")
    harness = table["harness"]
    held = message("joint/harness", name=harness["name"]) if harness else message("joint/no-harness")
    yield from wrapped(held, "  ", "    ")
    for item in table["between"]:
        between = message("joint/between", kind=message(f"gear-kinds/{item['kind']}"), name=item["name"])
        yield from wrapped(between, "  ", "    ")
    yield f"  {say(message('joint/wants', sound=table['sound_words']))}"
    for note in table["notes"]:
        yield from wrapped(note, f"  {say(message('joint/note'))} ", "        ")
    yield from _contacts(table["contacts"])
    for _, rows in groupby(table["rows"], key=lambda row: row["state"]):
        yield from _block(list(rows))


def _cars(table: Published) -> Message:
    return message("plan/for", cars=table["cars_words"]) if table["cars_words"] else message("joint/every-car")


def _contacts(found: Published) -> Iterator[str]:
    for extra in found["extra"]:
        at, function, gear = extra["address"], extra["function_words"], extra["gear_name"]
        said = message("joint/extra", at=at, function=function, gear=gear, words=extra["words"])
        yield from wrapped(said, "  ", "    ")
    if found["missing"]:
        names = tuple(
            message("joint/contact-for", at=point["address"], function=point["function_words"])
            for point in found["missing"]
        )
        yield from wrapped(message("joint/missing", contacts=Items(names, "comma")), "  ", "    ")


def _block(rows: Sequence[Published]) -> Iterator[str]:
    """The rows of one state. What is to be done with most of them is said once, above."""
    (usual, count), *_ = Counter(row["do"] for row in rows).most_common(1)
    common = usual if count > 1 else ""
    yield ""
    yield from wrapped(_block_head(rows, common, whole=count == len(rows)), "  ", "    ")
    yield _line("   ", [say(message(f"joint/{name}")) for name in ("function", "lead", "adapter", "car")])
    for row in rows:
        yield from _row(row, common)


def _block_head(rows: Sequence[Published], common: str, *, whole: bool) -> Message:
    state, number = rows[0]["state_words"], len(rows)
    if not common:
        return message("joint/block", state=state, number=number)
    if whole:
        return message("joint/block-all", state=state, number=number, do=common)
    return message("joint/block-most", state=state, number=number, do=common)


def _row(row: Published, common: str) -> Iterator[str]:
    car = say(all_of(*map(_point, row["car"]))) or "-"
    cells = (row["function_words"], _lead(row["lead"]), _adapter(row), car)
    columns = [_folded(text, width) for text, width in zip(cells, _COLUMNS, strict=True)]
    for number, parts in enumerate(zip_longest(*columns, fillvalue="")):
        yield _line("   " if number else "[ ]", parts)
    reasons = (message("joint/reason", why=reason["words"], name=reason["name"]) for reason in row["reasons"])
    for words in (*reasons, *row["words"], *_notes(row)):
        yield from wrapped(words, "      - ", "        ")
    if row["do"] and row["do"] != common:
        yield from wrapped(row["do"], "      > ", "        ")


def _line(box: str, parts: Sequence[str]) -> str:
    cells = "  ".join(f"{text:{width}}" for text, width in zip(parts, _COLUMNS, strict=True))
    return f"  {box} {cells}".rstrip()


def _lead(lead: Published | None) -> str:
    if lead is None:
        return "-"
    parts = [_colour(lead)]
    if lead["level"] == "line":
        parts.append(message("levels/line"))
    if lead["fuse"]:
        parts.append(message("joint/fuse", rating=_solid(lead["fuse"])))
    if lead["gauge"]:
        parts.append(_solid(lead["gauge"].replace("mm2", "mm²")))
    return say(_wire(lead["id"], parts))


def _adapter(row: Published) -> str:
    if not row["contacts"]:
        return row["through"] or "-"
    return say(all_of(*(_wire(_solid(contact["address"]), [_colour(contact)]) for contact in row["contacts"])))


def _point(point: Published) -> Value:
    if not point["address"]:
        return str(point["words"])
    parts = [_colour(point)]
    if point["behaves"]:
        parts.append(_solid(_behaves(point["behaves"])))
    if point["supply"]:
        parts.append(_solid(point["supply"]))
    return _wire(_solid(point["address"]), parts)


def _wire(name: str, parts: Sequence[Value]) -> Message:
    return message("joint/wire", name=name, what=Items(tuple(parts), "comma"))


def _notes(row: Published) -> Iterator[Message]:
    for point in row["car"]:
        if point["note"]:
            yield message("joint/noted", whose=message("joint/car"), note=point["note"])
    if row["lead"] and row["lead"]["note"]:
        yield message("joint/noted", whose=message("joint/lead"), note=row["lead"]["note"])


def _colour(thing: Published) -> Value:
    return str(thing["colour"]["words"]) if thing["colour"] else message("plugs/colour-unknown")


def _plug(plug: Published) -> Iterator[str]:
    yield ""
    yield from wrapped(_in_cars(message("plugs/named", plug=plug["name"], id=plug["id"]), plug), "", "  ")
    if plug["end"] != "radio":
        yield "  " + say(message(f"plugs/end-{plug['end']}"))
    for pin in plug["pins"]:
        yield from wrapped(f"{pin['address']:18} {pin['function_words']:20} {say(_pin(pin))}", "  ", " " * 23)
        yield from _doubts(pin)
    yield from _doubts(plug)
    if plug["blanks"]:
        yield from wrapped(message("plugs/empty-positions", pins=Items(tuple(plug["blanks"]), "comma")), "  ", "    ")


def _behaves(how: str) -> str:
    """How a wire behaves, in one word."""
    return say(message(f"behaviours-short/{how}")) if how else ""


def _output(output: str) -> Value:
    """What the factory radio sends, in short."""
    return message(f"plugs/sends-{output}")


def _pin(pin: Published) -> Value:
    parts = (
        _colour(pin),
        _behaves(pin["behaves"]),
        pin["supply"],
        message("plugs/draws-short", current=pin["draws"]) if pin["draws"] else "",
        message("joint/fuse", rating=pin["fuse"]) if pin["fuse"] else "",
        pin["gauge"],
        message("plugs/metered-short") if pin["metered"] else "",
    )
    said = _in_cars(Items(tuple(part for part in parts if part), "comma"), pin)
    return message("plugs/with-note", what=said, note=pin["note"]) if pin["note"] else said


def _functions(data: Published) -> Iterator[str]:
    for by, title in SOURCES.items():
        listed = [item for item in data["functions"] if item["by"] == by]
        if listed:
            yield ""
            yield say(message("plugs/heading", source=title))
        for item in listed:
            yield from wrapped(_function(item), "  ", "    ")
            yield from _doubts(item)


def _function(item: Published) -> Value:
    named = message("plugs/function", function=item["function_words"], at=item["address"])
    said = _in_cars(named if item["address"] else item["function_words"], item)
    return message("plugs/function-noted", function=said, note=item["note"]) if item["note"] else said


def _sound(data: Published) -> Iterator[str]:
    if data["sound"]:
        yield ""
    for system in data["sound"]:
        sound, output = _in_cars(message("plugs/sound"), system), _output(system["output"])
        said = message("plugs/sound-wants", sound=sound, output=output)
        if system["amplifier"]:
            said = message("plugs/sound-amplified", sound=sound, output=output, place=system["amplifier"])
        yield from wrapped(said, "", "  ")
        if system["powers"]:
            channels = Items(tuple(message(f"channels/{name}") for name in system["powers"]), "comma")
            yield from wrapped(message("joint/amplifier-powers", channels=channels), "  ", "    ")
        yield from _doubts(system)


def _doubts(thing: Published) -> Iterator[str]:
    for words in thing["conflicts"]:
        yield from wrapped(words, "    ! ", "      ")


def _in_cars(what: Value, thing: Published) -> Value:
    """What is said of a thing, with the cars that have it."""
    return message("plugs/in-cars", what=what, cars=thing["when"]) if thing["when"] else what


def _solid(text: str) -> str:
    """A value that no cell is to break."""
    return "".join(_SOLID.get(sign, sign) for sign in text)


def _folded(text: str, width: int) -> list[str]:
    lines = textwrap.wrap(text, width, break_on_hyphens=True) or [""]
    plain = str.maketrans({solid: sign for sign, solid in _SOLID.items()})
    return [line.translate(plain) for line in lines]
