"""What is said of a text that was read, each sentence with its place."""

from pathlib import Path

from undertrim.record.source import Source

PATH = Path("x.yaml")


def said(found: Source) -> list[str]:
    return [f"{p.position.line}:{p.position.column}: {p.message} ({p.hint})" for p in found.problems]
