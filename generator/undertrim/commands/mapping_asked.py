"""Asks on the terminal what each column of a spreadsheet is: what was proposed with some of its cells, to be accepted, changed or left out."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from undertrim.commands import new_gear, prompts
from undertrim.derive.evidence.facts import schema_at
from undertrim.record.imported import SKIP, UNDECIDED, Column, Table
from undertrim.record.imported.headings import facts_known
from undertrim.record.imported.mapping import OF_CAR, OF_ROW
from undertrim.words import Items, Message, message, say

_SAMPLES = 4
"""So many different cells of a column are shown."""
_ACCEPT, _OTHER, _TYPED = "accept", "other", "typed"
_HOWS = ("measured", "seen", "maker", "told")
_UNITS = {"length": ("mm", "cm", "in"), "resistance": ("ohm",), "time": ("min", "s"), "power": ("W",)}
"""The units that bare numbers of a quantity may have, the likeliest first; a default of ours."""


def confirm(table: Table, row: int, columns: list[Column], *, gear: bool) -> dict[str, str]:
    """Put what somebody says each column is in its place, one after the other; what holds for all rows, by the names of the mapping. Raises Stopped."""
    head = [cell.strip() for cell in table[row - 1]]
    for number, column in enumerate(columns):
        place = head.index(column.heading)
        cells = dict.fromkeys(cells[place].strip() for cells in table[row:] if place < len(cells))
        samples = tuple(cell for cell in cells if cell)[:_SAMPLES]
        taken = [one.about for one in columns[:number] if one.about != SKIP]
        columns[number] = _column(column, samples, taken, gear=gear)
    return _of_gear(columns) if gear else _of_cars(columns)


def _column(column: Column, samples: Sequence[str], taken: Sequence[str], *, gear: bool) -> Column:
    ask = say(message("import-asked/column", heading=column.heading, samples=_quoted(samples)))
    open_ = column.about == UNDECIDED or column.about in taken
    choices = [] if open_ else [(_ACCEPT, say(message("import-asked/accept", field=_called(column))))]
    choices += [(_OTHER, say(message("import-asked/other"))), (SKIP, say(message("new/leave-out")))]
    said = prompts.choose(ask, choices)
    if said == _ACCEPT:
        return replace(column, unit=column.unit or _unit(column.about, samples))
    if said == SKIP:
        return Column(column.heading, SKIP)
    about = _field(column.heading, taken, gear=gear)
    return replace(column, about=about, unit=_unit(about, samples), also={})


def _quoted(samples: Sequence[str]) -> Message | Items:
    return Items(tuple(samples), "semicolon") if samples else message("import-asked/empty")


def _called(column: Column) -> str:
    return f"{column.about} ({column.unit})" if column.unit else column.about


def _field(heading: str, taken: Sequence[str], *, gear: bool) -> str:
    """What the column is instead: one of those that are known by their words, or an address that is typed."""
    known = [one for one in _known(gear=gear) if one not in taken]
    typed = (_TYPED, say(message("import-asked/typed")))
    said = prompts.choose(say(message("import-asked/which", heading=heading)), [*((one, one) for one in known), typed])
    if said != _TYPED:
        return said

    def wrong(text: str) -> str:
        there = text in taken or not _is_field(text.strip(), gear=gear)
        return say(message("import-asked/no-field", about=text)) if there else ""

    return prompts.text(say(message("import-asked/address")), wrong)


def _known(*, gear: bool) -> Iterator[str]:
    if gear:
        yield "kind"
        yield from dict.fromkeys(one.name for kind in new_gear.kinds() for one in new_gear.questions(kind))
    else:
        yield from (*OF_ROW, f"{OF_CAR}side")
        yield from facts_known()


def _is_field(about: str, *, gear: bool) -> bool:
    if gear:
        return about in _known(gear=True)
    return about in OF_ROW or about.startswith(OF_CAR) or bool(schema_at(tuple(about.split("/"))))


def _unit(about: str, samples: Sequence[str]) -> str:
    """The unit of bare numbers, where the field has one and there are such; empty for none."""
    place = tuple(about.split("/"))
    kind = (schema_at(place) or schema_at(("gear", *place))).get("quantity", {}).get("kind", "")
    bare = any(cell.replace(",", "").replace(".", "").isdecimal() for cell in samples)
    units = _UNITS.get(kind, ()) if bare else ()
    if len(units) < 2:
        return "".join(units)
    return prompts.choose(say(message("import-asked/unit", about=about)), [(one, one) for one in units])


def _of_cars(columns: Sequence[Column]) -> dict[str, str]:
    """Who vouches for the facts, where no column says it, and how they were found out."""
    said: dict[str, str] = {}

    def wanted(text: str) -> str:
        return "" if text.strip() else say(message("import-asked/wanted"))

    if not any(one.about == "by" for one in columns):
        said["by"] = prompts.text(say(message("import-asked/by")), wanted)
    hows = [(one, say(message(f"not-so/how-{one}"))) for one in _HOWS]
    said["how"] = prompts.choose(say(message("import-asked/how")), hows)
    if said["how"] == "measured":
        said["with"] = prompts.text(say(message("not-so/with")), wanted)
    return said


def _of_gear(columns: Sequence[Column]) -> dict[str, str]:
    if any(one.about == "kind" for one in columns):
        return {}
    kinds = [(one, say(message(f"gear-kinds/{one}"))) for one in new_gear.kinds()]
    return {"kind": prompts.choose(say(message("import-asked/kind")), kinds)}
