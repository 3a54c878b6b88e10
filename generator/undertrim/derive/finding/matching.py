"""Which vehicles somebody means, the best first, with what the words also say: what to do, and which car."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from undertrim import resources
from undertrim.derive import vin
from undertrim.derive.finding import names, times
from undertrim.derive.finding.rows import FinderJob, Row, Vocabulary

TIME, CAR, JOB, JOB_SLIP = 1.5, 1.2, 0.8, 0.4
"""What a word counts that is no name: a time, a body or steering side, what to do, and the same with a slip of the finger."""
OF_PATTERN, OF_YEAR = 4.0, 1.0
"""What a number counts that is of a pattern of the record, and of one of its model years."""

_MOST_WORDS = 4
"""A phrase has at most so many words."""
_LEAST_BEGUN, _LEAST_JOB_SLIP = 3, 5
"""So many letters of a phrase, or of what to do with a slip in it, are enough."""


@dataclass(frozen=True)
class Token:
    """A word or phrase that was typed, the times that it may mean, and its meanings as a phrase."""

    text: str
    times: Sequence[times.Span]
    meanings: Sequence[tuple[str, str]]

    @cached_property
    def joined(self) -> str:
        """Without gaps."""
        return re.sub(r"[^a-z0-9]+", "", self.text)


@dataclass(frozen=True, slots=True)
class Hit:
    """A vehicle that may be meant, with the jobs and the choices that the words name."""

    row: Row
    score: float
    jobs: Sequence[str]
    car: dict[str, str]


@dataclass(frozen=True, slots=True)
class Query:
    """What was typed, as it is understood; `number` is a VIN in it, `misread` one with letters that none has."""

    tokens: Sequence[Token]
    number: str
    misread: str


def query(text: str, words: Vocabulary) -> Query:
    """What was typed, word by word."""
    whole = vin.normal(text)
    if vin.in_pieces(text) or vin.is_vin(text.strip().upper()) or vin.misread(text.strip().upper()):
        return Query((), *_number(whole))
    typed = times.split(names.folded(text), words)
    numbers = [word for word in typed if vin.is_vin(word.upper()) or vin.misread(word.upper())]
    rest = [word for word in typed if word not in numbers and word not in words.idle]
    return Query(tuple(_tokens(rest, words)), *_number(numbers[0].upper() if numbers else ""))


def _number(number: str) -> tuple[str, str]:
    return (number, "") if number and vin.is_vin(number) else ("", number)


def _tokens(typed: Sequence[str], words: Vocabulary) -> Iterator[Token]:
    """The longest phrases first; what is in none stands alone."""
    at = 0
    while at < len(typed):
        for count in range(min(_MOST_WORDS, len(typed) - at), 0, -1):
            text = " ".join(typed[at : at + count])
            meanings = words.phrases.get(text.replace("-", " "), ())
            if meanings or count == 1:
                yield Token(text, times.read(text), meanings or _begun(text, words))
                at += count
                break


def _begun(text: str, words: Vocabulary) -> Sequence[tuple[str, str]]:
    """What the phrases mean that a word is the beginning of; not the steering side, for "left" is also where a speaker is."""
    if len(text) < _LEAST_BEGUN:
        return ()
    found = (meaning for phrase, meanings in words.phrases.items() if phrase.startswith(text) for meaning in meanings)
    return tuple(dict.fromkeys(one for one in found if one[0] != "side"))


def search(asked: Query, rows: Sequence[Row], words: Vocabulary, latest: int) -> list[Hit]:
    """The vehicles that are meant, the best first; `latest` is the last model year there can be."""
    if not asked.tokens and not asked.number:
        return []
    hits = [hit for row in rows if (hit := _hit(asked, row, words, latest))]
    of_pattern = [hit for hit in hits if asked.number and _told(asked.number, hit.row) is not None]
    if asked.number and not of_pattern and not asked.tokens:
        return []
    return sorted(of_pattern or hits, key=lambda hit: (-hit.score, *order(hit.row)))


def order(row: Row) -> tuple[str, str, int, str]:
    """The order of vehicles that fit alike: by name, the newest first."""
    return row.make, row.model, -row.last_year, row.address


def _hit(asked: Query, row: Row, words: Vocabulary, latest: int) -> Hit | None:
    score, jobs = 0.0, list[Token]()
    car: dict[str, str] = {}
    for token in asked.tokens:
        name = name_score(token, row)
        time = TIME if times.holds(token.times, row) else 0.0
        said = {variant: value for variant, value in _of_car(token, row) if value}
        job = max((job_score(token, one, words) for one in row.jobs), default=0.0)
        best = max(name, time, CAR if said else 0.0, job)
        if not best:
            return None
        score += best
        car |= {variant: value for variant, value in said.items() if value != _ONLY}
        if job and name < names.BEGINS and not time and not said:
            jobs.append(token)
    told = _by_number(asked.number, row, latest) if asked.number else (0.0, {})
    return Hit(row, score + told[0], _jobs(jobs, row, words), {**car, **told[1]})


def name_score(token: Token, row: Row) -> float:
    """How well a word fits what a vehicle is called."""
    every = [form for name in row.names for form in names.forms(name)]
    return max(max(names.fits(text, form) for form in every) for text in {token.text, token.joined or token.text})


_ONLY = "*"
"""The car says so by itself: there is no other in the record."""


def _of_car(token: Token, row: Row) -> Iterator[tuple[str, str]]:
    for sort, value in token.meanings:
        if sort == "side" and value in row.sides:
            yield "drive-side", value if len(row.sides) > 1 else _ONLY
        if sort == "body" and value in row.bodies:
            yield "body", value if len(row.bodies) > 1 else _ONLY


def job_score(token: Token, job: FinderJob, words: Vocabulary) -> float:
    """How well a word fits what can be worked at: a word of its name, or a word for its kind of gear."""
    named = [word for word in re.split(r"[\s,()-]+", names.folded(job.name)) if word]
    begun = len(token.text) >= _LEAST_BEGUN and any(word.startswith(token.text) for word in named)
    if ("kind", job.kind) in token.meanings or begun:
        return JOB
    if len(token.text) < _LEAST_JOB_SLIP:
        return 0
    kinds = [phrase for phrase, meanings in words.phrases.items() if ("kind", job.kind) in meanings]
    return JOB_SLIP if any(names.one_slip(token.text, word) for word in (*named, *kinds)) else 0


def _jobs(tokens: Sequence[Token], row: Row, words: Vocabulary) -> list[str]:
    """The jobs that most of the words name, then those that most of the others do; in the order of the record."""
    left, chosen = list(tokens), set[str]()
    while left:
        named = {job.id: [token for token in left if job_score(token, job, words)] for job in row.jobs}
        most = max(map(len, named.values()), default=0)
        best = {job: of for job, of in named.items() if len(of) == most}
        chosen |= best.keys()
        left = [token for token in left if not any(token in of for of in best.values())]
    return [job.id for job in row.jobs if job.id in chosen]


def _by_number(number: str, row: Row, latest: int) -> tuple[float, dict[str, str]]:
    told = _told(number, row)
    years = vin.model_years(number, light=light(row), latest=latest)
    score = (OF_PATTERN if told is not None else 0) + (OF_YEAR if _any_year(years, row) else 0)
    return score, {name: choices[0] for name, choices in (told or {}).items() if len(choices) == 1}


def _told(number: str, row: Row) -> dict[str, Sequence[str]] | None:
    return vin.answers(number, [(pattern, said) for pattern, said, _ in row.vin])


def _any_year(years: Sequence[int], row: Row) -> bool:
    return any(row.first_year <= year <= row.last_year for year in years)


def light(row: Row) -> bool | None:
    """Whether a vehicle is surely one of those for which position 7 tells the span of years: passenger cars, by their bodies. None: nobody knows."""
    cars = resources.table("vin")["year"]["passenger_cars"]
    return True if row.bodies and all(body in cars for body in row.bodies) else None
