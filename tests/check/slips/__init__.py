"""Slips: single faults that a tired installer makes while writing a record, each with every place where it can be made.

Unlike `mutations.py`, nobody promises that a rule finds them: `make bench ARGS=--mistakes` counts which are found, and by what.
A slip is a function from a record's data to (place, spoilt data) pairs, like a mutation.
"""
