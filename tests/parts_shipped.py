"""Which parts of others come with the program, and under which licences: `make parts` writes them into generator/undertrim/PARTS.md.

The packages are those that the program asks for, and what these ask for, with the licence that each says of itself; versions stand in constraints.txt.
"""

import re
from collections.abc import Iterator
from importlib import metadata
from pathlib import Path

from undertrim.commands.installed import installed

ROOT = Path(__file__).parents[1]
FILE = ROOT / "generator" / "undertrim" / "PARTS.md"

HEAD = """# Parts and licences

Made by `make parts`; a test compares it with what is installed. What is ours is under the licences named in README.md.

## In the package, and in what it makes

| part | where | licence |
|---|---|---|
"""
INSIDE = (
    ("Source Sans Pro, typeface of the sheets", "publish/printed/fonts", "SIL Open Font License 1.1"),
    ("Material for MkDocs, style and icons of the pages' frame", "copied into each site from its package", "MIT; icons of Material Design under Apache-2.0"),
)  # fmt: skip
TAIL = """
## Packages that it runs with

| package | licence, as the package says |
|---|---|
"""
_CLASSIFIER = re.compile(r"License :: (?:OSI Approved :: )?(.+)")


def licence(one: metadata.Distribution) -> str:
    """What a package says of its licence: an expression, else its classifiers, else the first line of what it wrote."""
    about = one.metadata
    if "License-Expression" in about:
        return about["License-Expression"]
    kinds = [found[1] for line in about.get_all("Classifier", []) if (found := _CLASSIFIER.fullmatch(line))]
    return ", ".join(kinds) or (about.get_all("License") or [""])[0].strip().partition("\n")[0] or "not said"


def packages() -> dict[str, str]:
    """The licence of each package by its name."""
    _, *others = installed()
    return {str(one.metadata["Name"]): licence(one) for one in others}


def listed(text: str) -> dict[str, str]:
    """The same as it stands in a file."""
    return dict(re.findall(r"^\| ([\w.-]+) \| (.+) \|$", text.partition(TAIL)[2], flags=re.MULTILINE))


def _lines() -> Iterator[str]:
    yield HEAD
    yield from (f"| {part} | {where} | {said} |\n" for part, where, said in INSIDE)
    yield TAIL
    yield from (f"| {name} | {said} |\n" for name, said in sorted(packages().items(), key=lambda one: one[0].lower()))


def main() -> None:
    """Write the file anew."""
    FILE.write_text("".join(_lines()), encoding="utf-8")


if __name__ == "__main__":
    main()
