"""What is left of a file's problems once its allows are applied."""

from collections.abc import Collection, Iterator, Sequence

from undertrim.check import allowing
from undertrim.check.one_file import Looked, look
from undertrim.check.register import GEAR_RULES, RECORD_RULES, rule_ids
from undertrim.record.model import VehicleFacts
from undertrim.record.problem import Problem
from undertrim.record.store import Entry


def check_entry(entry: Entry) -> tuple[Problem, ...]:
    """All problems of one file by itself, allows applied."""
    return tuple(sorted(settled(look(entry), [], ()), key=lambda problem: problem.sort_key))


def settled(
    looked: Looked, across: Sequence[Problem], collection: Collection[str], single: Collection[str] | None = None
) -> Iterator[Problem]:
    """What is left of a file's problems after its allows; the rules that looked at it are those of the `collection` and `single` ones."""
    problems = [*looked.problems, *across]
    if not looked.allows:
        return iter(problems)
    alone = _rules(looked) if single is None else single
    ran = frozenset((*alone, *collection)) if looked.complete else frozenset()
    return allowing.apply(looked.path, looked.allows, problems, rule_ids(), ran)


def _rules(looked: Looked) -> Collection[str]:
    """The rules for one file that look at a file of this kind."""
    vehicle = looked.card is not None and isinstance(looked.card.facts, VehicleFacts)
    return RECORD_RULES if vehicle else GEAR_RULES
