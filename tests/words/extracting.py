"""Runs Babel as `make words` does, in this process."""

from contextlib import chdir
from pathlib import Path

from babel.messages.frontend import CommandLineInterface

ROOT = Path(__file__).parents[2]


def extract(template: Path, *folders: str) -> None:
    """Write the template of all texts in folders of the project."""
    with chdir(ROOT):
        arguments = ("--quiet", "extract", "-F", "pyproject.toml", "-o", str(template), *folders)
        CommandLineInterface().run(["pybabel", *arguments])  # type: ignore[no-untyped-call]  # Babel types its library only
