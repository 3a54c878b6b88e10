"""A review as blocks of lines, which text and Markdown print alike: a heading, and below it what changed."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.publish.encoding import Published
from undertrim.words import Items, message, say


@dataclass(frozen=True, slots=True)
class Mark:
    """One line, and how closely to look at it: weaker, care or plain."""

    text: str
    weight: str = "plain"


@dataclass(frozen=True, slots=True)
class Block:
    """A heading of a level (1 for the whole, 2 for a vehicle, 3 within it) and the lines below it."""

    level: int
    title: str
    lines: Sequence[Mark] = ()


MARKS: Mapping[str, str] = {"weaker": "review/mark-weaker", "care": "review/mark-care"}


def blocks(found: Published) -> list[Block]:
    """The whole: what to look at first of all vehicles, then vehicle by vehicle."""
    return [Block(1, say(message("review/title", base=found["base"])), [Mark(summary(found))]), *_rest(found)]


def summary(found: Published) -> str:
    """How many changes want which care, and what they reach."""
    if not any(found[key] for key in ("vehicles", "shorts", "gear", "found", "mended")):
        return say(message("review/nothing"))
    count = found["weaker"]
    weaker = message("review/weaker", count=count) if count else message("review/none-weaker")
    reached = [message("review/counted-vehicles", count=len(found["vehicles"]) + len(found["shorts"]))]
    reached += [message("review/counted-gear", count=len(found["gear"]))] if found["gear"] else []
    what = Items(tuple(reached))
    return say(message("review/summary", weaker=weaker, care=message("review/care", count=found["care"]), what=what))


def _rest(found: Published) -> Iterator[Block]:
    look = [
        Mark(f"{one['title']}: {line['said']}", line["weight"]) for one in found["vehicles"] for line in one["look"]
    ]
    if look:
        yield Block(2, say(message("review/look")), sorted(look, key=lambda mark: list(MARKS).index(mark.weight)))
    yield from _together([list(vehicle(one)) for one in found["vehicles"]])
    if found["shorts"]:
        yield Block(2, say(message("review/head-shorts")), list(_shorts(found["shorts"])))
    if found["gear"]:
        yield Block(2, say(message("sheet/gear")), list(_gear(found["gear"])))
    if found["found"] or found["mended"]:
        yield Block(2, say(message("review/head-together")))
        yield from _block("review/head-found", _placed(found["found"]))
        yield from _block("review/head-mended", _placed(found["mended"]))


def _together(every: Sequence[Sequence[Block]]) -> Iterator[Block]:
    """The blocks of vehicles; those of which the same is told are told with the first of them."""
    groups: list[list[Sequence[Block]]] = []
    for one in every:
        same = next((group for group in groups if (group[0][0].lines, group[0][1:]) == (one[0].lines, one[1:])), None)
        if same is None:
            groups.append([one])
        else:
            same.append(one)
    for first, *others in groups:
        called = Items(tuple(blocks[0].title for blocks in others), "comma")
        more = [Mark(say(message("review/alike", vehicles=called)))] if others else []
        yield replace(first[0], lines=[*first[0].lines, *more])
        yield from first[1:]


def vehicle(one: Published) -> Iterator[Block]:
    """The blocks of one vehicle."""
    was = [Mark(say(message("review/was", address=one["was"])))] if one["was"] else []
    yield Block(2, say(message("review/called", title=one["title"], address=one["vehicle"])), was)
    yield from _block("review/head-facts", _lines(one["facts"]))
    for visit in one["visits"]:
        title = say(message("review/head-visit", visit=visit["title"]))
        yield Block(3, title, [*map(Mark, more(visit)), *_lines(visit["totals"]), *_lines(visit["steps"])])
    yield from _block("fit-shown/title", [*_lines(one["verdicts"]), *_lines(one["margins"])])
    yield from _block("review/head-joints", _lines(one["joints"]))
    yield from _block("review/head-blockers", [*_lines(one["blockers"]), *map(Mark, one["refused"])])
    sure = [*_lines(one["conflicts"]), *_lines(one["evidence"])]
    yield from _block("review/head-evidence", [*([Mark(one["stamp"]["said"])] if one["stamp"] else []), *sure])
    yield from _block("review/head-photos", list(map(Mark, one["photos"])))
    yield from _block("review/head-found", _problems(one["found"]))
    yield from _block("review/head-mended", _problems(one["mended"]))


def more(visit: Published) -> Iterator[str]:
    """How much longer the visit is now."""
    steps, minutes = visit["more_steps"], visit["more_minutes"]
    said = []
    if steps:
        said.append(message("review/more-steps" if steps > 0 else "review/fewer-steps", count=abs(steps)))
    if minutes:
        said.append(message("review/more-minutes" if minutes > 0 else "review/fewer-minutes", minutes=abs(minutes)))
    if said:
        yield say(Items(tuple(said), "comma"))


def _block(code: str, lines: Sequence[Mark]) -> Iterator[Block]:
    if lines:
        yield Block(3, say(message(code)), lines)


def _lines(some: Sequence[Published]) -> list[Mark]:
    return [Mark(line["said"], line["weight"]) for line in some]


def _problems(some: Sequence[Published]) -> list[Mark]:
    return [Mark(f"{one['level']}: {one['said']} ({one['rule']})") for one in some]


def _placed(some: Sequence[Published]) -> list[Mark]:
    return [Mark(f"{one['file']}: {mark.text}") for one, mark in zip(some, _problems(some), strict=True)]


def _shorts(some: Sequence[Published]) -> Iterator[Mark]:
    for one in some:
        yield Mark(one["said"])
        yield from _problems(one["found"])


def _gear(some: Sequence[Published]) -> Iterator[Mark]:
    for one in some:
        yield Mark(one["said"])
        yield from _lines(one["facts"])
        yield from _problems([*one["found"]])
