"""Random loads of a channel, by seed, with what Python makes of them. A browser must give the same."""

import random
from typing import Any

from undertrim.derive.fit.channel_load import Driver, check
from undertrim.derive.fit.joined import Joined, Part
from undertrim.publish import encoding
from undertrim.publish.facts.plain import plain
from undertrim.record.model import Blank
from undertrim.record.units import Quantity, parse

Case = tuple[Driver, Joined]


class _Chance(random.Random):
    """A random source of its own name, since nothing secret hangs on it."""


_FEEDS = ("", "direct", "direct", "capacitor", "crossover", "unknown")


def loads(seed: int, count: int) -> list[Case]:
    """So many loads; the same for the same seed."""
    chance = _Chance(seed)
    return [_load(chance) for _ in range(count)]


def _load(chance: random.Random) -> Case:
    names = ("the speaker", "Dash top", "Tweeter")[: chance.randint(1, 3)]
    parts = (Part(name, _ohms(chance, 0.08), _ohms(chance, 0.08), chance.choice(_FEEDS)) for name in names)
    joined = Joined(tuple(parts), chance.choice([(), (), ("Shelf", "Pillar")]))
    return Driver("the factory radio", _ohms(chance, 0.3)), joined


def _ohms(chance: random.Random, lost: float) -> Quantity | Blank | None:
    if chance.random() < lost:
        return chance.choice([None, Blank.UNKNOWN])
    return parse(f"{chance.choice([2, 3, 4, 6, 8])} ohm", "resistance")


def asked_load(driver: Driver, joined: Joined) -> dict[str, Any]:
    """The question as the browser gets it."""
    parts = [
        {
            "name": one.name,
            "impedance": plain(one.impedance),
            "factory": plain(one.factory),
            "fed_through": one.fed_through,
        }
        for one in joined.parts
    ]
    whole = {"what": driver.what, "least": plain(driver.least), "parts": parts, "unplaced": joined.unplaced}
    asked: dict[str, Any] = encoding.said(whole)
    return asked


def said_load(driver: Driver, joined: Joined) -> dict[str, Any]:
    """The answer as the browser gives it."""
    found = check(driver, joined)
    said: dict[str, Any] = encoding.said(
        {
            "verdict": found.verdict,
            "words": found.words,
            "need": found.need,
            "have": found.have,
            "margin": found.margin,
            "missing": list(found.missing),
        }
    )
    return said
