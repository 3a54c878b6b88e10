"""What every printed sheet of a vehicle has: whose it is, from when, and where its page is, if that is known."""

from datetime import date
from typing import Literal, TypeAlias

from undertrim.publish.encoding import Published
from undertrim.publish.printed.sheet import glyphs
from undertrim.publish.printed.sheet.pictures import Pictures, code
from undertrim.words import message

Paper: TypeAlias = Literal["a4", "us-letter"]


def framed(facts: Published, shown: Published, url: str, paper: Paper, made: date, pictures: Pictures) -> Published:
    """What is shown with its frame; all texts are printable. `made` is the day of printing."""
    frame = {
        "car": {key: facts[key] for key in ("title", "years", "phase", "high_voltage", "demo", "address")},
        "data_date": facts["data_date"] or message("facts/not-recorded"),
        "made": made.isoformat(),
    }
    return {
        **glyphs.printable({**frame, **shown}),
        "link": "/".join(map(glyphs.text, url.split("/"))),
        "url": url,
        "paper": paper,
        "day": [made.year, made.month, made.day],
        "pictures": pictures.svg,
        "code": code(url) if url else "",
    }
