"""The printed sheet of a vehicle: its facts shaped for the Typst template, which decides the look."""

from undertrim.publish.printed.sheet.frame import Paper
from undertrim.publish.printed.sheet.view import view

__all__ = ["Paper", "view"]
