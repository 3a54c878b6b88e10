"""Steps that depend on which jobs are done in the same visit, in words for a printed sheet."""

from collections.abc import Iterator

from undertrim.publish.encoding import Published
from undertrim.publish.template_words import listed
from undertrim.words import Value, message


def notes(facts: Published) -> dict[int, Value]:
    """Place of a step -> in which visits with several jobs it comes or goes; nothing for all other steps."""
    marks = {target["id"]: target["mark"] for target in facts["targets"]}
    found: dict[int, dict[str, list[str]]] = {}
    for place, change, targets in _changes(facts):
        together = listed((marks[target] for target in targets), "plus")
        said = found.setdefault(place, {}).setdefault(change, [])
        if together not in said:
            said.append(together)
    return {
        place: listed((message(change, jobs=listed(sets, "either")) for change, sets in told.items()), "semicolon")
        for place, told in found.items()
    }


def _changes(facts: Published) -> Iterator[tuple[int, str, list[str]]]:
    """Step, the code of what becomes of it, and the smallest sets of targets in which that is so, car by car."""
    for plan in facts.get("plans", []):
        told: dict[int, list[set[str]]] = {}
        for targets, steps in sorted(_sets(plan), key=lambda item: len(item[0])):
            alone = set().union(*(plan["singles"][target] for target in targets))
            for place in sorted(alone ^ steps):
                smaller = told.setdefault(place, [])
                if not any(known <= set(targets) for known in smaller):
                    smaller.append(set(targets))
                    yield place, "sheet/only-with" if place in steps else "sheet/drops-out-with", targets


def _sets(plan: Published) -> Iterator[tuple[list[str], set[int]]]:
    return ((name.split("+"), set(steps)) for name, steps in plan["sets"].items())
