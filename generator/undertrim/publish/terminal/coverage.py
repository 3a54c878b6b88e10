"""Coverage as text for a terminal: the matrix of one vehicle, or a line for each vehicle of the collection."""

from collections.abc import Iterator, Sequence

from undertrim.publish.facts.coverage import Report, ShownShare
from undertrim.publish.facts.words import either
from undertrim.publish.terminal.lines import columns, wrapped
from undertrim.words import message, say


def vehicle_text(report: Report) -> str:
    """One vehicle: matrix, legend, share, what is lacking and what to measure next; ends in a newline."""
    return "\n".join([report.vehicle, "", *_table(report), *_legend(), "", *_share(report), *_next(report), ""])


def collection_text(reports: Sequence[Report], total: ShownShare) -> str:
    """A line for each vehicle in the order given, and the total of all; ends in a newline."""
    rows = [
        *([item.vehicle, say(item.share.share), _open(item)] for item in reports),
        [say(message("coverage/all")), say(total.share), ""],
    ]
    return "".join(f"{line}\n" for line in columns(rows))


def _open(report: Report) -> str:
    safety = sum(task.kind == "safety" for task in report.next)
    count = len(report.next)
    return say(message("coverage/open", number=count, safety=safety) if count else message("coverage/nothing-open"))


def _table(report: Report) -> Iterator[str]:
    names = [opening.id for opening in report.openings]
    head = ["", *(opening.name for opening in report.openings)]
    cells = [[say(row.label), *(say(message(f"coverage/{row.cells[name]}")) for name in names)] for row in report.cars]
    known = [f"{item.facts_wanted - len(item.facts_lacking)}/{item.facts_wanted}" for item in report.openings]
    yield from columns([head, *cells, [say(message("coverage/facts")), *known]])


def _legend() -> list[str]:
    return wrapped(message("coverage/legend"))


def _share(report: Report) -> Iterator[str]:
    yield say(message("coverage/looked-into", share=report.share.share))
    for item in report.missing:
        yield f"  {say(message('coverage/missing-in', opening=item.name, cars=either(item.cars)))}"


def _next(report: Report) -> Iterator[str]:
    yield ""
    yield say(message("coverage/next") if report.next else message("vehicle-page/nothing-unknown"))
    for number, task in enumerate(report.next, 1):
        yield from wrapped(task.words, f"{number:4}. ", " " * 6)
