"""Say what the changes since BASE do for whoever works on the cars: steps, tools, waits, cautions, verdicts, joints, and who says so.

BASE is a revision of git (`main`, `HEAD~3`; `main...` for where this branch left it) or a folder that holds records/ as they were. It is compared
with the files as they are here. Nothing is checked out and no record is written; what did not change is not read.
Exit 0 if no safety fact became weaker with the same source, 1 if one did (marked WEAKER), 2 if BASE is none.
"""

import argparse
import sys
import tempfile
from pathlib import Path

from undertrim.check.reviewing import review
from undertrim.commands.common import add_workspace, progress, workspace
from undertrim.derive.review.outcome import Review
from undertrim.publish.encoding import indented, said
from undertrim.publish.facts import review as facts
from undertrim.publish.terminal.review import review_markdown, review_text
from undertrim.publish.web.review_page import page
from undertrim.record.history.base import base
from undertrim.words import message

FORMATS = ("html", "json", "markdown", "text")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("base", metavar="BASE", help="a revision of git, or a folder that holds records/ as they were")
    parser.add_argument(
        "--format",
        choices=FORMATS,
        default="text",
        help="how to print; markdown is one comment for a pull request, html one file with before and now beside each other (default: text)",
    )
    parser.add_argument("--out", type=Path, metavar="FILE", help="where to write (default: standard output)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Compare and print; exit 1 where a safety fact became weaker with the same source."""
    place = workspace(options)
    with tempfile.TemporaryDirectory(prefix="undertrim-review-") as held:
        found = review(place, base(place, options.base, Path(held)), progress(message("commands/comparing")))
        text = _printed(found, options.format)
    if options.out:
        options.out.write_text(text, encoding="utf-8")
    else:
        sys.stdout.write(text)
    return 1 if found.weaker else 0


def _printed(found: Review, format_: str) -> str:
    shown = said(facts.review(found))
    match format_:
        case "json":
            return indented(shown) + "\n"
        case "html":
            return page(found, shown)
        case "markdown":
            return review_markdown(shown)
        case _:
            return review_text(shown)
