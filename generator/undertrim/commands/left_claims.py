"""Writes what 'undertrim take' refused into a claims file of its own, to be mended and taken again."""

import json
from collections.abc import Sequence
from pathlib import Path

from undertrim.commands.new_taken import Begun
from undertrim.derive.claims import Deed
from undertrim.record import claims
from undertrim.record.claims import ClaimsFile
from undertrim.record.problem import printable
from undertrim.record.source import Data
from undertrim.words import message, say

_NEW = "new_vehicle"


def leave(path: Path, refused: Sequence[tuple[ClaimsFile, int]], begun: Sequence[Begun]) -> None:
    """Write the answers, each with all that held for it; nothing where nothing was refused.

    A file begins one car, and the answers that may stand beside one are about that car: the first new car that was refused
    goes into the same file, each further one into one beside it.
    """
    answers = {(id(file), number): _answer(file, number) for file, number in refused}
    cars = [one.file for one in begun if one.deed is Deed.REFUSED]
    for number, car in enumerate(cars[1:], 2):
        _write(path.with_stem(f"{path.stem}-{number}"), _car(car))
    if answers or cars:
        first = _car(cars[0]) if cars else {}
        _write(path, first | ({"answers": list(answers.values())} if answers else {}))


def _write(path: Path, said: dict[str, Data]) -> None:
    with path.open("x", encoding="utf-8", newline="\n") as file:
        json.dump({"claims": 1, **said}, file, ensure_ascii=False, indent=2)
        file.write("\n")
    count = len(said.get("answers", ())) + (_NEW in said)
    print(say(message("claims/left", path=printable(str(path)), count=count)))


def _car(file: ClaimsFile) -> dict[str, Data]:
    """A new car with who says so."""
    data = file.source.data
    return {name: data[name] for name in ("by", "on") if name in data} | _numbered(
        {name: data[name] for name in ("car", _NEW) if name in data}
    )


def _answer(file: ClaimsFile, number: int) -> Data:
    data = file.source.data
    answer = data["answers"][number]
    if not isinstance(answer, dict):
        return answer
    return _numbered({name: data[name] for name in claims.SHARED if name in data} | answer)


def _numbered(said: dict[str, Data]) -> dict[str, Data]:
    """The same with whole numbers as numbers: a year is text once it was read."""
    return {name: _number(name, value) for name, value in said.items()}


def _number(name: str, value: Data) -> Data:
    if isinstance(value, dict):
        return _numbered(value)
    return int(value) if name in ("year", "first", "last") and isinstance(value, str) and value.isdecimal() else value
