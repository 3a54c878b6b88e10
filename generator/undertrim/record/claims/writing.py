"""Answers as a claims file has them: what one says, and a file with more of them."""

import json
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from undertrim.record.claims.answer import Answer
from undertrim.record.source import Data


def as_typed(answer: Answer) -> dict[str, Data]:
    """An answer with all that holds for it, but for what it is about."""
    said: dict[str, Data] = {"about": answer.about}
    said |= {"found": str(answer.found)} if answer.found else {"says": answer.says}
    said |= {"was": answer.was} if answer.was else {}
    said |= {"how": answer.how, "on": answer.on, "by": answer.by}
    said |= {"with": answer.with_} if answer.with_ else {}
    said |= {"car": numbered(answer.car)} if answer.car else {}
    said |= {name: value for name in ("side", "size", "hit") if (value := getattr(answer, name))}
    said |= {"note": answer.note} if answer.note else {}
    return said | ({"photo": {"file": answer.photo.file, "shows": answer.photo.shows}} if answer.photo else {})


def numbered(car: Data) -> Data:
    """A car with its year as a number, which is text once it was read."""
    if isinstance(car, dict) and isinstance(year := car.get("year"), str) and year.isdecimal():
        return {**car, "year": int(year)}
    return car


def file_text(answers: Sequence[Data], about: Mapping[str, str] | None = None) -> str:
    """A claims file; `about` one record, or each answer names its own."""
    return json.dumps({"claims": 1, **(about or {}), "answers": list(answers)}, ensure_ascii=False, indent=2) + "\n"


def put(path: Path, about: Mapping[str, str], answers: Iterable[Answer]) -> None:
    """Write the file of answers about one record in one step; without an answer there is none. Raises OSError."""
    typed = list(map(as_typed, answers))
    if not typed:
        path.unlink(missing_ok=True)
        return
    path.parent.mkdir(parents=True, exist_ok=True)
    aside = path.with_name(f".{path.name}.tmp")
    aside.write_text(file_text(typed, about), encoding="utf-8", newline="\n")
    aside.replace(path)
