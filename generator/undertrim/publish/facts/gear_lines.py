"""Sentences of a card that gear of several kinds shares; each yields nothing where its record says nothing."""

from collections.abc import Iterator

from undertrim.publish.facts import words
from undertrim.record.model import Blank
from undertrim.record.units import Quantity
from undertrim.words import Value, message


def known_as(nominal: str) -> Iterator[Value]:
    """The size people say."""
    if nominal:
        yield message("gear-card/known-as", nominal=nominal.rstrip("."))


def least_load(load: Quantity | Blank | None) -> Iterator[Value]:
    """The lowest impedance that its outputs take."""
    if load is not None:
        yield message("gear-card/least-load", load=words.quantity(load))
