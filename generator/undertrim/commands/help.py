"""The help of the command line in the reader's language.

What is said of a command and its arguments stands where they are declared, and is only gone over where somebody reads another
language than English: no command is slower for it.
"""

import argparse
from collections.abc import Iterable
from functools import cache

from undertrim.words import ENGLISH, catalogue, docs, spoken
from undertrim.words.language import Text

_ROOM = "argparse"


def tell(parser: argparse.ArgumentParser) -> None:
    """Say all that a parser and those below it show, in the reader's language."""
    if spoken() is ENGLISH:
        return
    parser.description = parser.description and docs.argument(parser.description)
    for group in parser._action_groups:
        group.title = group.title and docs.argument(group.title)
    for action in parser._actions:
        _tell(action)
        if isinstance(action, argparse._SubParsersAction):
            _tell_all(action._choices_actions)
            for inner in action.choices.values():
                tell(inner)


def _tell_all(actions: Iterable[argparse.Action]) -> None:
    for action in actions:
        action.help = action.help and docs.argument(action.help)


def _tell(action: argparse.Action) -> None:
    _tell_all([action])
    if isinstance(action.metavar, str):
        action.metavar = docs.argument(action.metavar)
    elif action.metavar is None and action.choices is None and action.nargs != 0:
        action.metavar = docs.argument(action.dest.upper() if action.option_strings else action.dest)


def answer_argparse() -> None:
    """Let argparse ask us for its own words, where it would ask the gettext of the system."""
    argparse._ = _word  # type: ignore[attr-defined]
    argparse.ngettext = _form  # type: ignore[attr-defined]


def _word(text: str | None) -> str | None:
    """A text, or the absence of one, which argparse asks for as well."""
    return text and _said(text.rstrip(), 1) + text[len(text.rstrip()) :]


def _form(one: str, more: str, number: int) -> str:
    return _said((one, more), number)


def _said(text: Text, number: int) -> str:
    code = "" if spoken() is ENGLISH else _codes().get(text, "")
    return spoken().text(code, text, number)


@cache
def _codes() -> dict[Text, str]:
    """The code of each text that argparse may ask for."""
    room = catalogue.english(_ROOM).items()
    return {text: f"{_ROOM}/{name}" for name, entry in room for text in catalogue.texts(entry).values()}
