"""The written pages as data: their code blocks and links."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[1]
HANDBOOK = ROOT / "records" / "handbook"
TOP = tuple(ROOT / name for name in ("README.md", "DEVELOPERS.md", ".github/CONTRIBUTING.md", ".github/SECURITY.md"))

_FENCE = re.compile(r"^```(?P<language>\w*)\n(?P<body>.*?)^```$", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True, slots=True)
class Block:
    """One fenced block: its language and what stands in it, the last line ended."""

    language: str
    body: str


def handbook() -> list[Path]:
    """The hand-written pages of the site."""
    return sorted(HANDBOOK.glob("*.md"))


def blocks(path: Path) -> list[Block]:
    """The fenced blocks of a page, in order."""
    return [Block(found["language"], found["body"]) for found in _FENCE.finditer(path.read_text(encoding="utf-8"))]


def prose(path: Path) -> str:
    """A page without its fenced blocks."""
    return _FENCE.sub("", path.read_text(encoding="utf-8"))


def links(path: Path) -> list[str]:
    """Where the links of a page lead."""
    return re.findall(r"\]\(([^)\s]+)\)", prose(path))


def in_backticks(path: Path) -> list[str]:
    """Everything that stands between single backticks, on one line."""
    return re.findall(r"`([^`\n]+)`", prose(path))


def commands(path: Path) -> Iterator[str]:
    """Every line of the page's shell blocks, without what follows a `>` or `|`."""
    for block in blocks(path):
        if block.language == "sh":
            yield from (re.split(r" [>|] ", line)[0].strip() for line in block.body.splitlines() if line.strip())


def written(path: Path, answers: Sequence[Block]) -> str:
    """A page with `answers` in place of its fenced blocks."""
    left = iter(answers)
    return _FENCE.sub(lambda _: "```{0.language}\n{0.body}```".format(next(left)), path.read_text(encoding="utf-8"))
