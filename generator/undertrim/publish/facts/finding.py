"""What the finder is given: a row for each vehicle, and the words of the reader's language."""

from collections import defaultdict
from collections.abc import Iterator

from undertrim.derive.finding.names import folded
from undertrim.derive.finding.rows import FinderJob, Row, Vocabulary
from undertrim.derive.procedure import planning
from undertrim.publish.facts import identity, names, whose, words
from undertrim.record.model import VehicleRecord
from undertrim.words import message, once_per_language, say
from undertrim.words.catalogue import english

_SORTS = ("body", "side", "kind")


def row(record: VehicleRecord, address: str) -> Row:
    """What the finder knows of a vehicle (`make/id`)."""
    facts = identity.identity(record)
    return Row(
        address=address,
        make=facts.make,
        model=facts.model,
        first_year=facts.model_years.first_year,
        last_year=facts.model_years.last_year,
        phase=facts.phase,
        others=list(facts.also_called),
        built_from=facts.months.built_from,
        built_to=facts.months.built_to,
        bodies=list(facts.bodies),
        sides=list(facts.drive_sides),
        tell=facts.tell,
        jobs=list(_jobs(record)),
        vin=[(one.pattern, words.clauses(one.when), words.when(record, one.when)) for one in record.vehicle.vin],
        whose=str(say(whose.mark(record.whose))),
    )


def _jobs(record: VehicleRecord) -> Iterator[FinderJob]:
    takes = {opening.id: opening.takes.kind for opening in record.openings.values()}
    for target in planning.targets(record):
        yield FinderJob(str(target), str(say(names.job(record, target))), takes.get(target.job, ""))


@once_per_language
def vocabulary() -> Vocabulary:
    """The words of the reader's language."""
    phrases: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for code in english("finder-words"):
        sort, _, value = code.partition("-")
        if sort in _SORTS:
            for phrase in _listed(code):
                phrases[phrase.replace("-", " ")].append((sort, value))
    return Vocabulary(_listed("months"), _listed("between"), _listed("idle"), phrases)


def _listed(code: str) -> list[str]:
    return [folded(one.strip()) for one in say(message(f"finder-words/{code}")).split(",")]
