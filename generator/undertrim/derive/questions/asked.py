"""What is asked for, before its fields and their forms are looked up."""

from collections.abc import Mapping
from dataclasses import dataclass

from undertrim.derive.questions.question import Sort
from undertrim.record.source import Data, Pointer
from undertrim.words import Message, Value


@dataclass(frozen=True, slots=True)
class Asked:
    """A place of the whole with what to do there; `why` where it is not what its sort says.

    `bare` may be asked without a field, `nothing` is: it takes more than values.
    """

    sort: Sort
    place: Pointer
    ask: Value
    why: Message | None = None
    bare: bool = False
    nothing: bool = False
    cars: Mapping[str, Data] | None = None
    """The cars that it is about, where those are not the ones that have what stands there."""
