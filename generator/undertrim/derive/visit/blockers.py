"""What stands in the way of a visit: what hangs on gear is that of the gear it names, and of the stock where it names none."""

from collections.abc import Collection, Iterator

from undertrim.derive.blockers import Blocker, by_weight, of_record
from undertrim.derive.visit.visit import Visit
from undertrim.words import message


def blockers(made: Visit, openings: Collection[str] | None = None) -> list[Blocker]:
    """Those of its cars, in order of weight; `openings` are those asked about, by id, where they are not the ones worked at."""
    asked = {opening.id for opening in made.openings} if openings is None else set(openings)
    found = [*_misfits(made), *of_record(made.record, made.address, made.shelf, made.duties, made.functions)]
    return by_weight(item for item in found if _concerns(item, asked, made))


def _concerns(item: Blocker, asked: Collection[str], made: Visit) -> bool:
    return (not item.openings or any(name in asked for name in item.openings)) and item.when.holds(made.car)


def _misfits(made: Visit) -> Iterator[Blocker]:
    for found in made.misfits:
        title = message("blockers/gear-at", gear=found.fit.name, opening=found.opening.name)
        weight = "stop" if found.certain else "unknown"
        yield Blocker(weight, title, found.fit.headline, found.when, (found.opening.id,))
