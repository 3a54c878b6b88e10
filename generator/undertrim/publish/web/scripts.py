"""The scripts of the pages: modules in the source, one classic script for each sort of page in the site.

A page that is opened from a folder on disk may not load modules, so each is put together here, without any tool of another language.
A module may hold, at the beginning of a line, these and no other lines that begin with `import` or `export`:

    import "./name.js";
    import * as name from "./name.js";
    import { one, other as another } from "./name.js";
    export function name(...    export async function name(...    export class Name ...    export const NAME = ...

A comment with lines of its own stays behind, with what types it tells: that is a fifth of what would be sent.
In the script each module is a function that runs once and gives what it exports; those that it imports stand before it.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from undertrim import resources
from undertrim.publish import script_words
from undertrim.words import Items, message
from undertrim.work.refused import Refused

ENTRIES = (
    "calculators",
    "claim-form",
    "finder",
    "gear-fit",
    "home",
    "keeper",
    "new-car",
    "page",
    "page-gear",
    "page-openings",
    "page-questions",
    "page-record",
    "page-visit",
    "page-wiring",
    "scheme",
    "stick",
)
"""The modules that pages load, at once or when they are wanted, each with all that it imports. Any other is part of one of these."""

WORDS = "words"
"""The module that speaks; a script that has it also gets the sentences which its modules name."""

_IMPORT = re.compile(r'import (?:(?:\* as (?P<whole>\w+)|\{ (?P<names>\w+(?: as \w+)?(?:, \w+(?: as \w+)?)*) \}) from )?"\./(?P<module>[\w-]+)\.js";')  # fmt: skip
_EXPORT = re.compile(r"export (?=(?:(?:async )?function|class|const) (?P<name>\w+))")
_COMMENT = re.compile(r"^ *\/\*(?:(?!\*\/).)*\*\/ *\n", re.DOTALL | re.MULTILINE)
"""One that begins a line and ends it. No text of a module has such lines."""
_ELSEWHERE = re.compile(r"\bimport\s*(?:\(|\.)")


class NotBundled(Refused):
    """A module cannot be put into a classic script; the text says where, and why."""


@dataclass(frozen=True, slots=True)
class Module:
    """A module: its name, what it imports and exports, and its text as it stands inside a function."""

    name: str
    imports: tuple[str, ...]
    exports: tuple[str, ...]
    body: str


def folder() -> Path:
    """Where the modules are."""
    return resources.top("site_overrides") / "assets" / "undertrim"


def modules() -> list[str]:
    """The names of all modules."""
    return sorted(path.stem for path in folder().glob("*.js"))


def bundle(entry: str, place: Path | None = None) -> str:
    """A module with all that it imports, as one classic script that speaks the language of the reader. Raises NotBundled."""
    modules: dict[str, Module] = {}
    _add(entry, place or folder(), modules, ())
    parts = [f"const {_variable(one.name)} = {_function(one)};" for one in modules.values()]
    if WORDS in modules:
        words = script_words.words((one.name, one.body) for one in modules.values())
        parts.insert(list(modules).index(WORDS) + 1, f"{_variable(WORDS)}.learn({words});")
    rests_on = [element for name, element in _RESTS_ON.items() if name in modules]
    guards = [f'if (!document.getElementById("{element}")) return;' for element in rests_on]
    return "\n".join(['(() => {\n"use strict";', *guards, *parts, "})();\n"])


_RESTS_ON = {"chosen": "ut-choosing"}
"""Modules for which a page must hold an element; in the preview the page of a record from which nothing can be derived does not."""


def _add(name: str, place: Path, there: dict[str, Module], above: tuple[str, ...]) -> None:
    """Add a module behind all that it imports, each of them once."""
    if name in above:
        circle = Items((*above[above.index(name) :], name), "arrow")
        raise NotBundled(message("building/modules-in-a-circle", modules=circle))
    if name not in there:
        found = read(place / f"{name}.js")
        for inner in found.imports:
            _add(inner, place, there, (*above, name))
        there[name] = found


def read(path: Path) -> Module:
    """A module as it stands in its file. Raises NotBundled."""
    imports: list[str] = []
    exports: list[str] = []
    lines: list[str] = []
    for number, line in enumerate(_text(path).splitlines(), 1):
        asked, given = _IMPORT.fullmatch(line), _EXPORT.match(line)
        if _ELSEWHERE.search(line) or (re.match(r"(?:import|export)\b", line) and not (asked or given)):
            where = {"path": str(path), "line": str(number)}
            raise NotBundled(message("building/way-to-import", **where, text=line.strip()[:60]))
        if asked:
            imports.append(asked["module"])
            lines += _bound(asked)
        elif given:
            exports.append(given["name"])
            lines.append(line.removeprefix("export "))
        else:
            lines.append(line)
    return Module(path.stem, tuple(imports), tuple(exports), _COMMENT.sub("", "\n".join(lines)))


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except FileNotFoundError:
        raise NotBundled(message("building/no-module", path=str(path))) from None


def _bound(asked: re.Match[str]) -> Iterator[str]:
    """What an import binds, from the value of the module's function."""
    value = _variable(asked["module"])
    if asked["whole"]:
        yield f"const {asked['whole']} = {value};"
    elif asked["names"]:
        yield f"const {{ {asked['names'].replace(' as ', ': ')} }} = {value};"


def _function(module: Module) -> str:
    return f"(() => {{\n{module.body}\nreturn {{ {', '.join(module.exports)} }};\n}})()"


def _variable(name: str) -> str:
    return f"${name.replace('-', '_')}"
