"""No entry of the catalogue is left over: each code stands in the program, a template, a script or a table, or is made there."""

import re
from collections.abc import Iterable
from functools import cache

from extracting import ROOT

from undertrim.record.implied import LISTS
from undertrim.words.catalogue import english, rooms

SOURCES = (".py", ".js", ".j2", ".html", ".typ", ".toml")
PLACES = ("generator/undertrim", "site_overrides", "schema")
FREE = {
    "buttons": "what a record calls them by ids of its own",
    "duty-names": "what a record calls them by ids of its own",
    **dict.fromkeys(LISTS, "the room of a question is its variant, and the name in it the choice"),
    "argparse": "what the library says, which `commands/help.py` finds by its English",
}
"""Rooms whose entries are found by another key than their code, each with its reason."""

CODE = re.compile(r"[a-z0-9][a-z0-9-]*(?:/[a-z0-9-]+)+")
BEGUN = re.compile(r"([a-z0-9][a-z0-9-]*(?:/[a-z0-9-]+)*/[a-z0-9-]*)(?:\$?\{|['\"] *(?:\+|~))")
"""What a code begins with that is made of a word: `f"areas/{area}"`, or with a sign of joining."""


@cache
def sources() -> str:
    files = (path for place in PLACES for path in sorted((ROOT / place).rglob("*")))
    own = "words/english"
    return "\n".join(one.read_text("utf-8") for one in files if one.suffix in SOURCES and own not in one.as_posix())


def unused(codes: Iterable[str], text: str) -> list[str]:
    whole, begun = set(CODE.findall(text)), tuple(set(BEGUN.findall(text)))
    return [code for code in codes if code not in whole and not code.startswith(begun)]


def test_every_entry_is_said_somewhere() -> None:
    codes = [f"{room}/{name}" for room in rooms() if room not in FREE for name in english(room)]
    assert unused(codes, sources()) == []


def test_an_entry_is_missed_that_nobody_says() -> None:
    assert unused(["plan/none", "areas/door", "plan/gone"], 'message("plan/none"), f"areas/{area}"') == ["plan/gone"]
