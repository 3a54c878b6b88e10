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
from collections.abc import Iterable, Iterator, Mapping
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
    "tried-form",
    "vehicle",
)
"""The modules that pages load, at once or when they are wanted, each with all that it imports. Any other is part of one of these."""

TAKES: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(("page-questions", "page-record", "page-visit", "page-wiring"), ("vehicle",)),
    "page-openings": ("vehicle", "gear-fit"),
    "page-gear": ("gear-fit",),
}
"""Scripts that take modules from others, which their pages load before them (`loaded`): what several sorts of page have is sent, and kept on a device, once."""

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
    modules = _whole(entry, place or folder())
    taken = _taken(entry, modules)
    own = {name: one for name, one in modules.items() if name not in taken}
    parts = [f"const {_variable(one.name)} = {_function(one)};" for one in own.values()]
    if WORDS in modules:
        words = script_words.words((one.name, one.body) for one in own.values())
        parts.insert(list(own).index(WORDS) + 1 if WORDS in own else 0, f"{_variable(WORDS)}.learn({words});")
    rests_on = [element for name, element in _RESTS_ON.items() if name in modules]
    guards = [f'if (!document.getElementById("{element}")) return;' for element in rests_on]
    takes = [
        f"const {_several(taken, script)} = window.undertrimParts.{_variable(script)};"
        for script in dict.fromkeys(taken.values())
    ]
    given = {script for scripts in TAKES.values() for script in scripts}
    gives = [f"(window.undertrimParts ||= {{}}).{_variable(entry)} = {_several(own)};"] if entry in given else []
    return "\n".join(['(() => {\n"use strict";', *guards, *takes, *parts, *gives, "})();\n"])


def loaded(entry: str) -> tuple[str, ...]:
    """The scripts that a page loads for one of its own, in their order, by their place in the site."""
    return tuple(f"assets/undertrim/{name}.js" for name in (*TAKES.get(entry, ()), entry))


def _taken(entry: str, modules: Iterable[str]) -> dict[str, str]:
    """Of the modules of a script those that it takes from another, each with the first that has it."""
    found: dict[str, str] = {}
    for script in TAKES.get(entry, ()):
        for name in _whole(script, folder()):
            if name in modules:
                found.setdefault(name, script)
    return found


def _several(names: Iterable[str] | Mapping[str, str], script: str = "") -> str:
    """Modules by their variables in braces; of those with a script the ones of this script."""
    held = [name for name in names if not script or (isinstance(names, Mapping) and names[name] == script)]
    return f"{{ {', '.join(map(_variable, held))} }}"


def _whole(entry: str, place: Path) -> dict[str, Module]:
    """A module behind all that it imports, by name."""
    modules: dict[str, Module] = {}
    _add(entry, place, modules, ())
    return modules


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
