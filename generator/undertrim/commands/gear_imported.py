"""Takes the rows of a spreadsheet with gear: a record begins for each piece that has none."""

from pathlib import Path

from undertrim.check.starting import Fresh
from undertrim.check.twins import twins
from undertrim.commands import new_gear
from undertrim.commands.imported_rows import Told, ToldCell
from undertrim.derive.claims import Deed
from undertrim.record.imported import Mapping, Row, Sheet
from undertrim.record.problem import Position
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, message


def take(place: Workspace, file: Path, mapping: Mapping, sheet: Sheet, *, dry: bool) -> Told:
    """Take them; nothing is written if it is `dry`."""
    told = Told(file)
    begun: dict[Path, tuple[int, Entry]] = {}
    for row in sheet.rows:
        told.rows[row.number] = list(_take(place, mapping, row, begun, told, dry=dry))
    if begun:
        told.like += twins(place, *(entry for _, entry in begun.values()), new=True)
    return told


def _take(
    place: Workspace, mapping: Mapping, row: Row, begun: dict[Path, tuple[int, Entry]], told: Told, *, dry: bool
) -> list[ToldCell]:
    said = {cell.about: cell.says for cell in row.cells}
    kind = said.pop("kind", mapping.kind)
    at = {cell.about: cell.at for cell in row.cells}
    first = Position(row.number, 1)
    if kind not in new_gear.kinds():
        return [ToldCell(at.get("kind", first), "kind", Deed.REFUSED, message("import/no-kind", kind=kind))]
    if wrong := new_gear.wrong(kind, said):
        return [ToldCell(at.get(name, first), name, Deed.REFUSED, why) for name, why in wrong]
    made = new_gear.made(place, kind, said)
    known = new_gear.there(place, made.entry.path)
    if made.entry.path in begun:
        return [ToldCell(at["model"], kind, Deed.REFUSED, message("import/row-twice", row=begun[made.entry.path][0]))]
    if known is not None:
        return _against(made, known, at, kind)
    if made.errors:
        return [ToldCell(first, kind, Deed.REFUSED, problem.said) for problem in made.errors]
    begun[made.entry.path] = row.number, made.entry
    said_so = _begin(place, made, dry=dry)
    told.changed.append(said_so)
    return [ToldCell(first, kind, Deed.FILLED, said_so)]


def _begin(place: Workspace, made: Fresh, *, dry: bool) -> Message:
    """Write it, unless it is `dry`, and say so."""
    if not dry:
        made.write()
    return message("starting/would-begin" if dry else "starting/begun", path=str(place.shown(made.entry.path)))


def _against(made: Fresh, known: dict[str, str], at: dict[str, Position], kind: str) -> list[ToldCell]:
    """What a row says beside the record that the piece has: the same, or something else; what the record does not say is not added."""
    says = new_gear.flat(made.entry.source.data["gear"])
    found: list[ToldCell] = []
    for name, value in says.items():
        place = at.get(name, next(iter(at.values())))
        if name not in known:
            found.append(ToldCell(place, name, Deed.KEPT, message("import/gear-lacks", name=name, value=value)))
        elif not new_gear.same(name, known[name], value):
            said = message("import/gear-differs", name=name, value=known[name], other=value)
            found.append(ToldCell(place, name, Deed.DISPUTED, said))
    return found or [ToldCell(next(iter(at.values())), kind, Deed.ALREADY, message("claims/already", value=kind))]
