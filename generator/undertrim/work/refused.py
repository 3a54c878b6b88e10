"""What ends a command with a sentence: it is asked for something that cannot be, and nothing is wrong with the program or a record."""


class Refused(Exception):  # noqa: N818 - it names what happened
    """The text says what cannot be done, why, and the way out."""
