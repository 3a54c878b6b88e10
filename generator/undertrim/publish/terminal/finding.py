"""Which vehicles were found, as data and as text for a terminal: each with what tells whether it is this car."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from urllib.parse import quote

from undertrim.derive import vin
from undertrim.derive.finding import matching, telling
from undertrim.derive.finding.matching import Hit, Query
from undertrim.derive.finding.rows import Row, Vocabulary
from undertrim.publish.encoding import Published, said
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Items, Message, Value, message, say


@dataclass(frozen=True, slots=True)
class FoundVehicle:
    """A vehicle that may be meant: what it answers to the question that is asked, what tells it, what the words say of car and job, and the text of the visit."""

    address: str
    title: str
    answer: Value
    about: Value
    tell: str
    car: Value
    jobs: Sequence[str]
    visit: str


@dataclass(frozen=True, slots=True)
class Finding:
    """What was found, and what is said of it, the most important first."""

    said: Sequence[Value]
    vehicles: Sequence[FoundVehicle]


def finding(asked: Query, rows: Sequence[Row], words: Vocabulary, latest: int) -> Finding:
    """What is found of what was typed."""
    hits = matching.search(asked, rows, words, latest)
    first, answers = telling.counted(hits)
    none = telling.why_none(asked, rows, words, latest)
    told = [first if hits else none, *telling.of_number(asked, hits, latest)]
    ordered = sorted(hits, key=lambda hit: list(answers).index(hit.row.address)) if answers else hits
    return Finding([one for one in told if one], [_vehicle(asked, hit, answers) for hit in ordered])


def _vehicle(asked: Query, hit: Hit, answers: dict[str, Value]) -> FoundVehicle:
    row = hit.row
    years = f"{row.first_year}–{row.last_year}" if row.first_year != row.last_year else str(row.first_year)
    return FoundVehicle(
        address=row.address,
        title=" ".join(filter(None, (row.make, row.model, years, row.phase))),
        answer=answers.get(row.address, ""),
        about=Items(tuple(_about(row)), "comma"),
        tell=row.tell,
        car=Items(tuple(_car(asked, hit)), "comma"),
        jobs=[job.name for job in row.jobs if job.id in hit.jobs],
        visit=visit(hit),
    )


def _about(row: Row) -> Iterator[Value]:
    yield message("finder/built-capital", **{"from": row.built_from, "to": row.built_to})
    if row.bodies:
        yield telling.bodies(row)
    yield from [row.whose] if row.whose else ()
    yield message("finder/either-side") if len(row.sides) > 1 else message(f"drive-side/{row.sides[0]}")


def _car(asked: Query, hit: Hit) -> Iterator[Value]:
    """Which car it is: by its number, else by the steering side and body that were typed."""
    told = [words for pattern, _, words in hit.row.vin if words and asked.number and vin.is_of(asked.number, pattern)]
    if told:
        yield from told
        return
    if side := hit.car.get("drive-side"):
        yield message(f"drive-side/{side}")
    if body := hit.car.get("body"):
        yield message("vehicle-page/body-shape", body=message(f"body/{body}"))


def visit(hit: Hit) -> str:
    """The text of a visit with what the words say: `finch-2014-2018?jobs=dash&radio=map`."""
    pairs = [("jobs", ",".join(quote(job, safe="@") for job in hit.jobs))] if hit.jobs else []
    pairs += [(quote(name), quote(choice)) for name, choice in hit.car.items()]
    name = hit.row.address.partition("/")[2]
    return "?".join(filter(None, (quote(name), "&".join(f"{word}={value}" for word, value in pairs))))


def finding_data(found: Finding) -> Published:
    """The same as data."""
    data: Published = said(found)
    return data


def finding_text(found: Finding) -> str:
    """The same as text, ending in a newline."""
    return "\n".join([*_lines(found), *(["", closing()] if found.vehicles else []), ""])


def _lines(found: Finding) -> Iterator[str]:
    for told in found.said:
        yield from wrapped(told)
    for vehicle in found.vehicles:
        yield ""
        if vehicle.answer:
            yield from wrapped(vehicle.answer, "  ", "  ")
        yield from wrapped(message("finder/line", title=vehicle.title, address=vehicle.address), "  ", "      ")
        for line in _details(vehicle):
            yield from wrapped(line, "      ", "      ")


def _details(vehicle: FoundVehicle) -> Iterator[Message | Value]:
    yield vehicle.about
    if vehicle.tell:
        yield message("finder/tell", tell=vehicle.tell)
    if say(vehicle.car):
        yield message("finder/this-car", car=vehicle.car)
    if vehicle.jobs:
        yield message("finder/opens", jobs=Items(tuple(vehicle.jobs), "semicolon"))
    yield f'undertrim plan "{vehicle.visit}"' if vehicle.jobs else ""
