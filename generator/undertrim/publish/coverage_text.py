"""Coverage as text for a terminal: the matrix of one vehicle, or a line for each vehicle of the collection."""

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from undertrim.derive.coverage import MISSING

Data = Mapping[str, Any]
WIDTH = 100
_SHOWN = {MISSING: "MISSING"}
_LEGEND = (
    "value: recorded; none: looked into, not there; MISSING: nobody has said; "
    "facts: how many of the facts that its kind wants are known"
)


def vehicle_text(report: Data) -> str:
    """One vehicle: matrix, legend, share, what is lacking and what to measure next; ends in a newline."""
    return "\n".join([report["vehicle"], "", *_table(report), *_legend(), "", *_share(report), *_next(report), ""])


def collection_text(reports: Sequence[Data], total: Data) -> str:
    """A line for each vehicle in the order given, and the total of all; ends in a newline."""
    rows = [*([item["vehicle"], item["share"], _open(item)] for item in reports), ["all vehicles", total["share"], ""]]
    return "".join(f"{line}\n" for line in _columns(rows))


def _open(report: Data) -> str:
    safety = sum(task["kind"] == "safety" for task in report["next"])
    count = len(report["next"])
    return f"{count} to find out, {safety} of them for safety" if count else "nothing to find out"


def _table(report: Data) -> Iterator[str]:
    names = [opening["id"] for opening in report["openings"]]
    head = ["", *(opening["name"] for opening in report["openings"])]
    cells = [
        [row["label"], *(_SHOWN.get(state := row["cells"][name], state) for name in names)] for row in report["cars"]
    ]
    known = [
        f"{item['facts_wanted'] - len(item['facts_lacking'])}/{item['facts_wanted']}" for item in report["openings"]
    ]
    yield from _columns([head, *cells, ["facts", *known]])


def _columns(rows: Sequence[Sequence[str]]) -> list[str]:
    """Rows with their cells set out in columns."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]


def _legend() -> list[str]:
    return textwrap.wrap(_LEGEND, WIDTH)


def _share(report: Data) -> Iterator[str]:
    yield f"Openings recorded or looked into: {report['share']}"
    for item in report["missing"]:
        yield f"  MISSING: {item.name} in {' or '.join(item.cars)}"


def _next(report: Data) -> Iterator[str]:
    yield ""
    yield "To find out next, the most useful first:" if report["next"] else "Nothing is known to be unknown."
    for number, task in enumerate(report["next"], 1):
        yield from textwrap.wrap(task["words"], WIDTH, initial_indent=f"{number:4}. ", subsequent_indent=" " * 6)
