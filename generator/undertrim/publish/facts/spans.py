"""What jobs come to where the car is left open: from the least to the most of its kinds, since no car has what excludes each other.

`assets/undertrim/visit-spans.js` says the same on the page.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.procedure import tally
from undertrim.derive.procedure.tally import FATES
from undertrim.publish.encoding import Published
from undertrim.publish.facts.totals import time_text
from undertrim.publish.facts.words import listed
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class SpannedRow:
    """Fasteners of one sort: how many of each fate, in the order of `FATES`, and whether some have no recorded number."""

    sort: Value
    counts: tuple[Value, ...]
    unrecorded: Value


@dataclass(frozen=True, slots=True)
class SpannedNeed:
    """A tool with what will do in its place, or something to buy with its number and part; `some` tells that only some cars want it."""

    name: Value
    instead: tuple[Value, ...] = ()
    number: Value = ""
    part: Value = ""
    some: bool = False


@dataclass(frozen=True, slots=True)
class Spanned:
    """All of it as a page shows it; what is to buy stands part by part."""

    time: Value
    tools: Sequence[SpannedNeed]
    rows: Sequence[SpannedRow]
    buy: Sequence[SpannedNeed]


def spanned(kinds: Sequence[Published]) -> Spanned:
    """All that the kinds of car come to."""
    each = working(kinds)
    return Spanned(time(each), tools(each), rows(each), buy(each))


def working(kinds: Sequence[Published]) -> list[Published]:
    """The totals of the kinds of car that there is something to do at; of all where there is nothing at any."""
    each = [entry["totals"] for entry in kinds]
    return [one for one in each if one["minutes"] or one["untimed"] or one["tools"]] or each


def span(numbers: Iterable[int]) -> Value:
    """A number, or the least and the most."""
    found = sorted(set(numbers))
    return found[0] if len(found) < 2 else message("times/span", least=found[0], most=found[-1])


def time(each: Sequence[Published]) -> Value:
    """The time, or the shortest and the longest."""
    texts = [one["time_text"] for one in each]
    if len(set(texts)) == 1:
        found: Value = texts[0]
        return found
    spent = sorted((tally.Time(one["minutes"], one["untimed"], tuple(one["waits"])) for one in each), key=_long)
    least, most = spent[0], spent[-1]
    if all((one.untimed, one.waits) == (least.untimed, least.waits) for one in spent):
        return time_text(least, most.minutes)
    return message("times/between", least=time_text(least), most=time_text(most))


def _long(spent: tally.Time) -> tuple[float, int, int, float]:
    return spent.minutes, spent.untimed, len(spent.waits), sum(wait or 0 for wait in spent.waits)


def tools(each: Sequence[Published]) -> list[SpannedNeed]:
    """Every tool, in the order of first use."""
    found = {tool["name"]: tool for one in each for tool in one["tools"]}
    users = [{tool["name"] for tool in one["tools"]} for one in each]
    return [
        SpannedNeed(name, tuple(found[name]["instead"]), some=not all(name in one for one in users)) for name in found
    ]


def rows(each: Sequence[Published]) -> list[SpannedRow]:
    """Fasteners by sort, in the order of first use."""
    counted = [{row["sort"]: row for row in one["fasteners"]} for one in each]
    return [
        SpannedRow(
            sort,
            tuple(span(kind.get(sort, {}).get(fate, 0) for kind in counted) for fate in FATES),
            span(kind.get(sort, {}).get("unrecorded", 0) for kind in counted),
        )
        for sort in dict.fromkeys(sort for kind in counted for sort in kind)
    ]


def sums(each: Sequence[Published]) -> list[Value]:
    """All sorts together, by fate and at the end those of no recorded number: the sum of one car, never of several."""
    return [span(sum(row.get(fate, 0) for row in one["fasteners"]) for one in each) for fate in (*FATES, "unrecorded")]


def buy(each: Sequence[Published]) -> list[SpannedNeed]:
    """What is to buy, thing by thing and part by part."""
    places = dict.fromkeys((item["what"], item["part"]) for one in each for item in one["buy"])
    return [SpannedNeed(what, (), _numbers(each, what, (part,)), part) for what, part in places]


def bought(each: Sequence[Published]) -> Iterator[SpannedNeed]:
    """The same thing by thing, with all its parts."""
    for what in dict.fromkeys(item["what"] for one in each for item in one["buy"]):
        parts = dict.fromkeys(item["part"] for one in each for item in one["buy"] if item["what"] == what)
        yield SpannedNeed(what, (), _numbers(each, what, parts), listed(*parts, joined="semicolon"))


def _numbers(each: Sequence[Published], what: Value, parts: Collection[Value]) -> Value:
    """How many of a thing some parts want: `2`, `0 to 2`, `4 and more` where a number is not recorded, or that none is."""
    counts = [[item["count"] for item in one["buy"] if item["what"] == what and item["part"] in parts] for one in each]
    known = span(sum(count for count in of if count is not None) for of in counts)
    if not any(None in of for of in counts):
        return known
    return message("sheet/and-more", number=known) if known else message("vehicle-page/unknown-number")
