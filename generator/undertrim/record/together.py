"""Fields of a block that stand together in a mapping of their own, such as the face of a plug on one line.

`face: {view: wires, rows: 2, columns: 8}` says the fields `view`, `rows` and `columns` of the block around it, which the whole has
there. Which fields may stand in which mapping says the schema; what stands twice, or in the wrong one, is told.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record.dividing import Picked
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer
from undertrim.words import Items, Message, message


@dataclass(frozen=True, slots=True)
class Apart:
    """A block with its fields beside each other; `spots` are the places of those that were typed in a mapping, `faults` what is wrong."""

    block: dict[str, Data]
    spots: dict[str, Pointer]
    faults: tuple[tuple[Pointer, Message], ...]

    key: str = ""
    """The field whose value is a key."""

    @property
    def picked(self) -> dict[str, Data]:
        """The block in which each such value knows where it was typed."""
        return {
            name: Picked(value, self.spots[name], self.spots[name], own=True, of_key=name == self.key)
            if name in self.spots
            else value
            for name, value in self.block.items()
        }


def apart(shape: Shape | None, value: Data, typed: Pointer) -> Apart | None:
    """A block as typed with its fields beside each other; None where none of them stand together."""
    if shape is None or not isinstance(value, dict):
        return None
    if shape.is_keyed(value):
        return _behind_key(shape, value, typed)
    return None if shape.together.keys().isdisjoint(value) else _beside(shape, value, typed)


def _behind_key(shape: Shape, value: dict[str, Data], typed: Pointer) -> Apart:
    """The fields of a block that has a word of one of them as its only key: `CAUTION: [Sharp edge., Cut hands., Wear gloves.]`."""
    [(key, said)] = value.items()
    names, place = shape.keyed_list, (*typed, key)
    block: dict[str, Data] = {shape.keyed: key}
    spots: dict[str, Pointer] = {shape.keyed: place}
    if isinstance(said, dict):
        block |= {name: inner for name, inner in said.items() if name != shape.keyed}
        spots |= {name: (*place, name) for name in block if name != shape.keyed}
        return Apart(block, spots, (), shape.keyed)
    block |= dict(zip(names, said, strict=True))
    spots |= {name: (*place, i) for i, name in enumerate(names)}
    return Apart(block, spots, (), shape.keyed)


def is_wrong(shape: Shape, value: dict[str, Data]) -> bool:
    """Whether what stands behind the only key of a block is neither its fields by name nor the usual ones in a list."""
    [said] = value.values()
    return not isinstance(said, dict) and not (isinstance(said, list) and len(said) == len(shape.keyed_list))


def wrong(shape: Shape, value: dict[str, Data]) -> Message:
    """What is then wrong with it."""
    [key], names = value, shape.keyed_list
    return message("spread/behind-key", name=key, fields=Items(names, "comma"), many=len(names))


def _beside(shape: Shape, value: dict[str, Data], typed: Pointer) -> Apart:
    block: dict[str, Data] = {}
    spots: dict[str, Pointer] = {}
    faults: list[tuple[Pointer, Message]] = []
    for key, inner in value.items():
        if key not in shape.together:
            block[key] = inner
            continue
        for steps, said in _faults(shape, value, key, block):
            faults.append(((*typed, key, *steps), said))
        for name in _taken(shape, value, key, block):
            block[name], spots[name] = inner[name], (*typed, key, name)
    return Apart(block, spots, tuple(faults))


def _taken(shape: Shape, value: dict[str, Data], key: str, block: dict[str, Data]) -> list[str]:
    """The fields that a mapping says; one that no block has stands among them, so that it is told like any other."""
    inner, own = value[key], shape.together[key].fields
    if not isinstance(inner, dict):
        return []
    return [name for name in inner if name not in {**value, **block} and (name in own or name not in shape.fields)]


def _faults(
    shape: Shape, value: dict[str, Data], key: str, block: dict[str, Data]
) -> Iterator[tuple[tuple[str, ...], Message]]:
    """What is wrong with a mapping, by the field in it."""
    inner, own = value[key], shape.together[key].fields
    if not isinstance(inner, dict) or not inner:
        yield (), message("spread/together", name=key, fields=Items(tuple(own), "comma"))
        return
    for name in inner:
        if name in own and name in {**value, **block}:
            yield (name,), message("spread/together-twice", field=name, name=key)
        elif name in shape.fields and name not in own:
            yield (name,), message("spread/not-together", field=name, name=key, fields=Items(tuple(own), "comma"))
