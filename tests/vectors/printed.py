"""What a person sees of an answer: in this, the program and the scripts of the pages must be the same."""

from typing import Any


def printed(answer: Any) -> Any:
    """An answer without its bare numbers: each is printed somewhere in its words, and there it counts."""
    if isinstance(answer, dict):
        return {key: printed(value) for key, value in answer.items() if not _bare(value)}
    if isinstance(answer, list):
        return [printed(value) for value in answer if not _bare(value)]
    return answer


def _bare(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
