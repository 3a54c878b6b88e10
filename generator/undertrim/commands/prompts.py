"""Asks on the terminal. The one module that knows the library which does."""

from collections.abc import Callable, Sequence

import questionary
from questionary import Choice, Style

_STYLE = Style([("question", "bold"), ("answer", "bold"), ("highlighted", "bold reverse"), ("instruction", "")])


class Stopped(Exception):  # noqa: N818 - it names what happened
    """Whoever was asked wants to stop."""


def text(ask: str, check: Callable[[str], str], hint: str = "") -> str:
    """A line of text; `check` says what is wrong with it, or nothing. Raises Stopped."""
    asked = questionary.text(ask, validate=lambda said: check(said) or True, instruction=hint or None, style=_STYLE)
    return _of(asked.unsafe_ask)


def choose(ask: str, choices: Sequence[tuple[str, str]]) -> str:
    """The value of one of some choices, each with its label. Raises Stopped."""
    made = [Choice(label, value=value) for value, label in choices]
    return _of(questionary.select(ask, made, style=_STYLE, instruction=" ").unsafe_ask)


def several(ask: str, choices: Sequence[tuple[str, str]], hint: str, needed: str = "") -> list[str]:
    """The values of some choices, each with its label; `needed` says that there must be one, where there must. Raises Stopped."""
    made = [Choice(label, value=value) for value, label in choices]
    asked = questionary.checkbox(
        ask, made, validate=lambda found: needed if needed and not found else True, style=_STYLE, instruction=hint
    )
    try:
        return [str(value) for value in asked.unsafe_ask()]
    except (KeyboardInterrupt, EOFError) as error:
        raise Stopped from error


def _of(ask: Callable[[], str]) -> str:
    try:
        return str(ask()).strip()
    except (KeyboardInterrupt, EOFError) as error:
        raise Stopped from error
