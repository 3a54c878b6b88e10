"""The verbs of the command line, one file each; every `run` returns an exit code."""

import argparse
from typing import Protocol

from undertrim.commands import (
    build,
    cable,
    check,
    coverage,
    fit,
    load,
    meter,
    mirror,
    plan,
    reckon,
    serve,
    shop,
    template,
    verify,
    wiring,
)
from undertrim.commands.common import Usage

__all__ = ["COMMANDS", "Usage"]


class Command(Protocol):
    """One verb: the module's docstring is its help, its first line the summary."""

    __doc__: str | None

    def configure(self, parser: argparse.ArgumentParser, /) -> None:
        """Add the verb's arguments."""

    def run(self, options: argparse.Namespace, /) -> int:
        """Do it; 0 fine, 1 problems found."""


COMMANDS: dict[str, Command] = {
    "build": build,
    "cable": cable,
    "check": check,
    "coverage": coverage,
    "fit": fit,
    "load": load,
    "meter": meter,
    "mirror": mirror,
    "plan": plan,
    "reckon": reckon,
    "serve": serve,
    "shop": shop,
    "template": template,
    "verify": verify,
    "wiring": wiring,
}
