"""What is wrong with the handbook: files that are not published, and on its pages what is not passed on.

Its pages come from the same strangers as the records, so nothing of theirs reaches the site but text, links and pictures.
"""

from collections.abc import Iterator, Sequence
from pathlib import Path

from undertrim.record import handbook
from undertrim.record.handbook import Found
from undertrim.record.plain_markdown import Met, met
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.store import Workspace
from undertrim.words import Message, message

RULE = "handbook"


def names(workspace: Workspace, path: Path) -> bool:
    """Whether a path is the handbook, one of its files, or a folder around it."""
    start, asked = handbook.folder(workspace.records).absolute(), path.absolute()
    return start.is_relative_to(asked) or asked.is_relative_to(start)


def problems(workspace: Workspace, paths: Sequence[Path] = ()) -> list[Problem]:
    """All problems of the handbook, if a run over `paths` looks at it."""
    if paths and not any(names(workspace, path) for path in paths):
        return []
    every = handbook.found(handbook.folder(workspace.records))
    return [problem for item in every for problem in _of(workspace, item)]


def _of(workspace: Workspace, item: Found) -> Iterator[Problem]:
    shown = workspace.shown(item.path)
    if item.refused:
        yield _problem(shown, Position(1, 1), item.refused)
    elif item.is_page:
        yield from _page(shown, item)


def _page(shown: Path, item: Found) -> Iterator[Problem]:
    try:
        text = item.path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        yield _problem(shown, Position(1, 1), message("handbook/not-utf-8"))
        return
    if not text.lstrip().startswith(
        "# "
    ):  # the site engine takes lines like 'note: ...' at the top for settings, and hides them
        yield _problem(shown, Position(1, 1), message("handbook/no-heading"))
    yield from (_problem(shown, at, one.said) for at, one in _placed(text, met(text, item.place)))


def _placed(text: str, found: Sequence[Met]) -> Iterator[tuple[Position, Met]]:
    """Each with its place in the text: of several that read the same, the first goes to the first."""
    after: dict[str, int] = {}
    for one in found:
        at = max(text.find(one.text, after.get(one.text, 0)), 0)
        after[one.text] = at + 1
        yield Position(text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at)), one


def _problem(shown: Path, at: Position, said: Message) -> Problem:
    return Problem(shown, at, Level.ERROR, RULE, said)
