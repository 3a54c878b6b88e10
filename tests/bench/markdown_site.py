"""The same pages as a person would have made them by hand: Markdown, put into a site by MkDocs with Material and its own search.

That is what a collection would cost without anything of ours: no check, nothing derived, only pages rendered from a text that is there.
"""

import math
import subprocess
import sys
import time
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from tempfile import TemporaryDirectory

from herd import Herd

from undertrim.publish.facts import vehicle as facts
from undertrim.publish.web import pages
from undertrim.publish.web.views import VIEWS

MOST = 400
"""MkDocs is not asked for more vehicles than these: its time grows with the number of pages, and 5,000 vehicles would take hours."""

_SETTINGS = "site_name: Cars\nuse_directory_urls: false\ntheme: {{name: material, font: false}}\nplugins: [{plugins}]\nnav: [index.md]\n"
_STARTS = {f"h{level}": "#" * level + " " for level in range(1, 7)} | {"li": "- ", "dt": "- ", "td": " | ", "th": " | "}
_BLOCKS = frozenset(
    {"p", "div", "section", "article", "ul", "ol", "table", "tr", "dd", "dl", "details", "summary", *_STARTS}
)
_SILENT = frozenset({"svg", "script", "style", "template"})


def by_mkdocs(herd: Herd) -> dict[str, float]:
    """Seconds on the clock for the whole of it, and for the pages alone, without its search; nothing for a herd that is too large."""
    if herd.size > MOST:
        return dict.fromkeys(("MkDocs with search, same pages, s", "MkDocs without search, s"), math.nan)
    with TemporaryDirectory(prefix="undertrim-markdown-") as folder:
        _write(herd, Path(folder) / "docs")
        return {
            "MkDocs with search, same pages, s": _built(Path(folder), "search"),
            "MkDocs without search, s": _built(Path(folder), ""),
        }


def _built(folder: Path, plugins: str) -> float:
    (folder / "mkdocs.yml").write_text(_SETTINGS.format(plugins=plugins), encoding="utf-8")
    start = time.perf_counter()
    subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet"], cwd=folder, check=True, capture_output=True)
    return time.perf_counter() - start


def _write(herd: Herd, docs: Path) -> None:
    docs.mkdir()
    (docs / "index.md").write_text("# Cars\n", encoding="utf-8")
    for path in herd.paths:
        folder = docs / "vehicles" / path.parent.name
        folder.mkdir(parents=True, exist_ok=True)
        bodies = pages.vehicle(facts.vehicle(herd.workspace.load(path)))
        for view in VIEWS:
            (folder / f"{view.path(path.stem)}.md").write_text(markdown(bodies[view.name]), encoding="utf-8")


def markdown(html: str) -> str:
    """The words of a page, with its headings, lists and tables, and without its pictures and controls."""
    reader = _Reader()
    reader.feed(html)
    return "\n\n".join(reader.blocks()) + "\n"


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self._blocks = [""]
        self._silent = 0

    def blocks(self) -> Iterator[str]:
        """The texts, one for each block that holds one."""
        return (" ".join(block.split()) for block in self._blocks if block.strip(" #-|\n"))

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self._silent += tag in _SILENT
        if tag in _BLOCKS and tag not in ("td", "th"):
            self._blocks.append("")
        self._blocks[-1] += _STARTS.get(tag, "")

    def handle_endtag(self, tag: str) -> None:
        self._silent -= tag in _SILENT
        if tag in _BLOCKS and tag not in ("td", "th"):
            self._blocks.append("")

    def handle_data(self, data: str) -> None:
        if not self._silent:
            self._blocks[-1] += data
