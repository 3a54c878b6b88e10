"""The verbs of the command line, one file each; every `run` returns an exit code."""

import argparse
from collections.abc import Iterator, Mapping
from importlib import import_module
from typing import Protocol, cast

_NAMES = (
    "ask",
    "build",
    "cable",
    "check",
    "copy",
    "coverage",
    "evidence",
    "find",
    "fit",
    "format",
    "give",
    "import",
    "init",
    "load",
    "meter",
    "mirror",
    "new",
    "photo",
    "plan",
    "reckon",
    "review",
    "serve",
    "sheet",
    "shop",
    "take",
    "template",
    "upgrade",
    "verify",
    "wiring",
)


class Command(Protocol):
    """One verb: the module's docstring is its help, its first line the summary."""

    __doc__: str | None

    def configure(self, parser: argparse.ArgumentParser, /) -> None:
        """Add the verb's arguments."""

    def run(self, options: argparse.Namespace, /) -> int:
        """Do it; 0 fine, 1 problems found."""


class _Commands(Mapping[str, Command]):
    """The modules by name. Each is loaded when it is asked for: to load all of them takes longer than most answers."""

    def __getitem__(self, name: str) -> Command:
        if name not in _NAMES:
            raise KeyError(name)
        return cast("Command", import_module(f"{__name__}.{name}"))

    def __iter__(self) -> Iterator[str]:
        return iter(_NAMES)

    def __len__(self) -> int:
        return len(_NAMES)


COMMANDS = _Commands()
