"""What people read of the source itself: a docstring that is a rule's page or a command's help, and what is said of a command's arguments.

Translators get these texts as they stand (`extraction.docstring`).
"""

from inspect import cleandoc

from undertrim.words.language import spoken

ARGUMENTS = "commands"
"""What a gettext file calls all that is said of arguments, whichever command they belong to."""


def page(name: str, doc: str | None) -> str:
    """The docstring of a module in the reader's language; `name` is the module's, as in `check/rules/unused_part`."""
    return spoken().text(f"{name}#page", cleandoc(doc or ""))


def first_line(text: str) -> str:
    """What stands for the whole in a list."""
    return text.partition("\n")[0]


def argument(text: str) -> str:
    """What is said of an argument, or its name, in the reader's language."""
    return spoken().text(ARGUMENTS, text)
