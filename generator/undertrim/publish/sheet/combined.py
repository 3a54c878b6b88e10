"""Steps that depend on which jobs are done in the same visit, in words for a printed sheet."""

from collections.abc import Iterator, Mapping
from typing import Any

Data = Mapping[str, Any]


def notes(facts: Data) -> dict[int, str]:
    """Step number, counted from 0 -> a note on visits with more than one job. Steps that never change have none."""
    marks = {target["id"]: target["mark"] for target in facts["targets"]}
    found: dict[int, list[str]] = {}
    for place, words in _changes(facts, marks):
        said = found.setdefault(place, [])
        if words not in said:
            said.append(words)
    return {place: "; ".join(said) for place, said in found.items()}


def _changes(facts: Data, marks: Mapping[str, str]) -> Iterator[tuple[int, str]]:
    for plan in facts.get("plans", []):
        listed = sorted(((name.split("+"), set(steps)) for name, steps in plan["sets"].items()), key=_size)
        told: dict[int, list[set[str]]] = {}
        for targets, steps in listed:
            alone = set().union(*(plan["singles"][target] for target in targets))
            for place in sorted(alone ^ steps):
                smaller = told.setdefault(place, [])
                if not any(known <= set(targets) for known in smaller):
                    smaller.append(set(targets))
                    yield place, _words(place in steps, [marks[target] for target in targets])


def _size(item: tuple[list[str], set[int]]) -> int:
    return len(item[0])


def _words(added: bool, marks: list[str]) -> str:
    together = " + ".join(marks)
    return f"only when {together} are done together" if added else f"can drop out when {together} are done together"
