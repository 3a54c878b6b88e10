"""A command that was called in a way it cannot follow; by itself, since all that starts the program needs it."""

from undertrim.words import Value, say


class Usage(Exception):  # noqa: N818 - it names what happened
    """The command was called in a way it cannot follow; `said` tells what to do instead."""

    def __init__(self, said: Value) -> None:
        super().__init__(said)
        self.said = said

    def __str__(self) -> str:
        return say(self.said)
