"""One question about a car, with the form of its answer."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from undertrim.record.source import Data
from undertrim.words import Message, Value


class Sort(StrEnum):
    """Why something is asked, in the order of the use of an answer."""

    SAFETY = "safety"
    CONFLICT = "conflict"
    MISSING = "missing"
    DIMENSION = "dimension"
    SOUND = "sound"
    FUNCTION = "function"
    DUTY = "duty"
    SIDE = "side"
    COARSE = "coarse"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class AnswerForm:
    """How an answer is typed: its `sort`, and what may be chosen or measured.

    `quantity` is the kind of a measured value, `units` those that are offered for it, `least` and `most` the plausible range as typed.
    `choices` are the words of a list without 'unknown'. `none` and `unknown` tell whether these words may be the answer.
    """

    sort: str
    quantity: str = ""
    units: tuple[str, ...] = ()
    least: str = ""
    most: str = ""
    choices: tuple[str, ...] = ()
    none: bool = False
    unknown: bool = False


@dataclass(frozen=True, slots=True)
class Field:
    """One value that is asked for: its address, what it is called and means, its form, and what the record says so far.

    It is asked only where the answer `only_if` names has one of these values: (address of another field, words).
    """

    about: str
    title: Value
    means: Value
    form: AnswerForm
    stands: str = ""
    optional: bool = False
    only_if: tuple[str, tuple[str, ...]] | None = None


@dataclass(frozen=True, slots=True)
class Question:
    """What to find out: what to do, why it matters, where the handbook shows how, the cars it is about, and its fields.

    Without fields it is for a person who keeps the record: it takes more than values. `cars` is a condition as `when` has it.
    """

    sort: Sort
    about: str
    ask: Value
    why: Message
    how: str
    fields: tuple[Field, ...]
    cars: Mapping[str, Data]
