"""Undertrim: a fitment knowledge base for mobile-electronics installers."""

__version__ = "0.1.0"
