"""Cautions that the step just before has too: told in full once, then cut short with the step that has them in full."""

from collections import Counter
from collections.abc import Iterator, Sequence

from undertrim.publish.encoding import Published
from undertrim.words import Value, message

Wording = tuple[str, ...]


def told_at(steps: Sequence[Published]) -> Iterator[tuple[int, ...]]:
    """For each step, as data and counted from 1, and each of its cautions: the step that has it in full, 0 where this one must.

    DANGER is always in full. The page's script does the same to the steps that it shows.
    """
    told: dict[Wording, int] = {}
    for number, step in enumerate(steps, start=1):
        told = {known: told.get(known, number) for known in map(wording, step["cautions"])}
        yield tuple(_in_full(caution, told[wording(caution)], number) for caution in step["cautions"])


def short(step: int) -> Value:
    """What stands in the place of what was told before a step."""
    return message("cautions/in-full-before", step=step)


def _in_full(caution: Published, told: int, number: int) -> int:
    return 0 if told == number or caution["signal"] == "DANGER" else told


def wording(caution: Published) -> Wording:
    """All that a caution says."""
    return tuple(caution[part] for part in ("signal", "hazard", "consequence", "avoid", "when"))


class Once:
    """The cautions that several steps have, each once: a page is sent so, names them at each step, and its script puts them there. DANGER is in full at each."""

    def __init__(self, steps: Sequence[Published]) -> None:
        every = [one for step in steps for one in step["cautions"] if one["signal"] != "DANGER"]
        often = [one for one, times in Counter(map(wording, every)).items() if times > 1]
        self._places = {one: place for place, one in enumerate(often, 1)}
        by_wording = {wording(one): one for one in every}
        self.cautions = [by_wording[one] for one in often]

    def place(self, caution: Published) -> int:
        """Its place among them, from 1; 0 where it is not there."""
        return self._places.get(wording(caution), 0)
