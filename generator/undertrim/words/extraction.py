"""Hands the English of the catalogue to Babel, which makes a template for translators of it (`make words`)."""

import ast
import tomllib
from collections.abc import Callable, Iterator, Mapping
from inspect import cleandoc
from pathlib import PurePath
from typing import Any, BinaryIO

from undertrim.words.catalogue import context, texts
from undertrim.words.docs import ARGUMENTS
from undertrim.words.language import Text
from undertrim.words.tables import is_word

Extracted = tuple[int, str, tuple[str, ...], list[str]]


def catalogue(file: BinaryIO, _keywords: Any, _tags: Any, options: Any) -> Iterator[Extracted]:
    """The texts of one room of `english/`, each with its line, its code as context, and a remark on what it is."""
    text = file.read().decode("utf-8")
    room = PurePath(file.name).with_suffix("").as_posix().rpartition("/english/")[2]
    lines = text.splitlines()
    for name, entry in tomllib.loads(text).items():
        yield from _entry(lines, f"{room}/{name}", name, entry)


def table(file: BinaryIO, _keywords: Any, _tags: Any, options: Any) -> Iterator[Extracted]:
    """The words of one data table, each with where it stands in it as context."""
    path = PurePath(file.name)
    name = f"kinds/{path.parent.name}" if path.parent.parent.name == "kinds" else path.stem
    yield from _below((name,), tomllib.loads(file.read().decode("utf-8")))


def _below(place: tuple[str, ...], data: Any) -> Iterator[Extracted]:
    if isinstance(data, dict):
        for key, value in data.items():
            if is_word(place, key, value):
                yield 1, "pgettext", ("/".join((*place, key)), value), []
            yield from _below((*place, key), value)
    elif isinstance(data, list):
        for row in data:
            yield from _below((*place, str(row["code"])), row) if isinstance(row, dict) and "code" in row else ()


def _entry(lines: list[str], code: str, name: str, entry: Mapping[str, str]) -> Iterator[Extracted]:
    line = lines.index(f"[{name}]") + 1
    for part, english in texts(entry).items():
        yield _extracted(line, context(code, part), english, ["What to do about it."] if part == "way_out" else [])


def _extracted(line: int, place: str, english: Text, remarks: list[str]) -> Extracted:
    if isinstance(english, str):
        return line, "pgettext", (place, english), remarks
    return line, "npgettext", (place, *english), remarks


def docstring(file: BinaryIO, _keywords: Any, _tags: Any, options: Any) -> Iterator[Extracted]:
    """The page that a module's docstring is (`docs.page`), with the words of its arguments if it is a command (`docs.argument`)."""
    module = ast.parse(file.read())
    name = PurePath(file.name).with_suffix("").as_posix().rpartition("/undertrim/")[2]
    page = ast.get_docstring(module, clean=False)
    if page and any(isinstance(node, ast.FunctionDef) and node.name in _READ_BY_PEOPLE for node in module.body):
        yield 1, "pgettext", (f"{name}#page", cleandoc(page)), [_AS_IT_STANDS]
    for node in ast.walk(module):
        if isinstance(node, ast.Call):
            yield from _arguments(node)


_READ_BY_PEOPLE = ("check", "check_gear", "check_all", "meetings", "configure")
"""What a module has whose docstring is a page: it is a rule or a command."""

_AS_IT_STANDS = "Not a template: braces and percent signs stay as they are."
_TOLD = ("help", "metavar", "title", "description")
"""What is said of an argument, a group of them or a verb."""


def _arguments(call: ast.Call) -> Iterator[Extracted]:
    """The words of one argument of a command; one without a name of its own is called by its option."""
    given = {keyword.arg: keyword.value for keyword in call.keywords}
    for told in (given[name] for name in _TOLD if name in given):
        parts = told.elts if isinstance(told, ast.Tuple) else [told]
        yield from (_argument(one) for one in parts if isinstance(one, ast.Constant))
    if _is_argument(call) and not {"metavar", "action", "choices"} & given.keys():
        yield _argument(call.args[0], lambda name: name.removeprefix("--").replace("-", "_").upper())


def _is_argument(call: ast.Call) -> bool:
    return isinstance(call.func, ast.Attribute) and call.func.attr == "add_argument" and bool(call.args)


def _argument(node: ast.expr, named: Callable[[str], str] = str) -> Extracted:
    assert isinstance(node, ast.Constant)
    return node.lineno, "pgettext", (ARGUMENTS, named(str(node.value))), [_AS_IT_STANDS]
