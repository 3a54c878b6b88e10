"""Docstrings that people read: what a rule's page or a command's help says. Translators get them whole (`extraction.docstring`)."""

from inspect import cleandoc

from undertrim.words.language import spoken


def page(name: str, doc: str | None) -> str:
    """The docstring of a module in the reader's language; `name` is the module's, as in `check/rules/unused_part`."""
    return spoken().text(f"{name}#page", cleandoc(doc or ""))


def first_line(text: str) -> str:
    """What stands for the whole in a list."""
    return text.partition("\n")[0]
