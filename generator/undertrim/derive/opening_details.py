"""What a step says of one opening beside what is usual for its kind."""

from dataclasses import dataclass

from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Details:
    """Sentences for a step of fitting, and what turns the fasteners that it needs (`hex 10 mm`)."""

    said: tuple[Value, ...] = ()
    turned: tuple[str, ...] = ()


NOTHING = Details()
