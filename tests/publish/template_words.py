"""A template of one small opening, and the words on its sheets."""

import re

from making import record
from pdf_text import texts
from undertrim.derive.fit.stock import Gear
from undertrim.publish.printed import paper
from undertrim.publish.printed.paper import A4, Paper, Template

ADDRESS = "brindleway/otter-2014-2018"


def small(opening: str, *more: str, gear: Gear | None = None, name: str = "front-door") -> Template:
    about = record(
        "parts: {panel: {}}\n", f"openings: {{{name}: {{kind: speaker, behind: [panel], {opening}}}}}\n", *more
    )
    return Template(ADDRESS, about, about.openings[name], gear)


def said(asked: Template, on: Paper = A4) -> list[str]:
    return [re.sub(r"\s+", " ", page) for page in texts(paper.render(asked, on))]
