"""What the facts of a collection rest on, as text for a terminal."""

from collections.abc import Iterator, Sequence

from undertrim.publish.facts.account import Report, Share
from undertrim.publish.terminal.lines import columns, wrapped
from undertrim.words import Message, message, say

_PEOPLE = (
    *(f"account/{name}" for name in ("who", "facts", "at-cars", "cars")),
    "finder/group-vehicles",
    *(f"account/{name}" for name in ("first", "last", "corrected")),
)


def account_text(report: Report) -> str:
    """The report; ends in a newline."""
    return "\n".join(
        [
            say(report.of),
            "",
            *_shares(report.shares),
            "",
            *_people(report),
            *_weak(report),
            *_vehicles(report),
            *_months(report),
            "",
        ]
    )


def _shares(shares: Sequence[Share]) -> list[str]:
    return columns([[f"  {say(share.name)}", say(share.words)] for share in shares]) + wrapped(
        message("account/counted"), "  ", "  "
    )


def _people(report: Report) -> Iterator[str]:
    yield _heading("people")
    head = [say(message(code)) for code in _PEOPLE]
    rows = [
        [one.by, *map(str, (one.facts, one.measured, one.cars, one.vehicles)), one.first, one.last, str(one.corrected)]
        for one in report.people
    ]
    yield from (f"  {line}" for line in columns([head, *rows]))
    yield from wrapped(message("account/corrected-means"), "  ", "  ")


def _weak(report: Report) -> Iterator[str]:
    yield ""
    yield _heading("one-word")
    yield from _or_none(
        [f"{one.vehicle}: {say(fact.name)} ({fact.about})" for one in report.one_word for fact in one.facts],
        message("account/no-word"),
    )
    yield ""
    yield _heading("old")
    yield from _or_none([say(one.words) for one in report.old], report.none_old)


def _vehicles(report: Report) -> Iterator[str]:
    yield ""
    yield _heading("by-vehicle")
    head = [say(message("bay/vehicle")), *(say(share.name) for share in report.shares)]
    rows = [[one.vehicle, *(f"{share.percent} %" for share in one.shares)] for one in report.vehicles]
    yield from (f"  {line}" for line in columns([head, *rows]))


def _months(report: Report) -> Iterator[str]:
    if report.months:
        yield ""
        yield _heading("over-time")
        head = [
            say(message("account/month")),
            say(message("finder/group-vehicles")),
            *(say(share.name) for share in report.shares),
        ]
        rows = [
            [one.month, str(one.vehicles), *(f"{share.percent} %" for share in one.shares)] for one in report.months
        ]
        yield from (f"  {line}" for line in columns([head, *rows]))


def _or_none(lines: Sequence[str], none: Message) -> Iterator[str]:
    yield from (f"  {line}" for line in (lines or [say(none)]))


def _heading(name: str) -> str:
    return say(message(f"account/{name}")).upper()
