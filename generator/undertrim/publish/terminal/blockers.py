"""What is in the way of a job, above everything else that a terminal says of it."""

from collections.abc import Iterable, Iterator

from undertrim.publish.encoding import Published
from undertrim.publish.terminal.lines import wrapped
from undertrim.words import message


def lines(found: Iterable[Published]) -> Iterator[str]:
    """A few lines for each, in their order: `STOP: High-voltage vehicle. ...`"""
    for item in found:
        title = message("plan/in-cars", text=item["title"], cars=item["when"]) if item["when"] else item["title"]
        said = message(
            "plan/blocker", weight=message(f"blockers/weight-{item['weight']}"), title=title, text=item["text"]
        )
        yield from wrapped(said, "  ", "      ")
