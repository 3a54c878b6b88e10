"""Copies of a record's data."""

from typing import Any


def copied(data: Any) -> Any:
    """A copy of mappings, lists and scalars that shares none of the first two with `data`.

    `copy.deepcopy` also looks for things that stand in two places, of which a record has none, and takes more than twice as long.
    """
    if isinstance(data, dict):
        return {key: copied(value) for key, value in data.items()}
    return [copied(value) for value in data] if isinstance(data, list) else data
