"""The kinds of quantity and their units, read once from data/units.toml."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any

_JOINTS = re.compile(r" ?[·⋅•∙*.] ?|(?<=\S)[ -](?=\S)")


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: canonical value = number x `factor` + `offset`. `symbol` is how it is printed."""

    name: str
    symbol: str
    factor: Fraction
    offset: Fraction
    spellings: tuple[str, ...]
    any_case: bool
    fractions: bool
    mark: int
    system: str


@dataclass(frozen=True, slots=True)
class Other:
    """Values of the system `source` below `below` (canonical) are also printed in `unit`, to `decimals`."""

    source: str
    unit: str
    below: float
    decimals: int


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of quantity; the first of `units` is the canonical one. `name` has its article."""

    key: str
    name: str
    example: str
    offer: tuple[str, ...]
    negative: bool
    whole: bool
    clock: bool
    of_one: bool
    units: Mapping[str, Unit]
    others: tuple[Other, ...]
    exact: Mapping[str, Unit]
    folded: Mapping[str, Unit]

    @property
    def canonical(self) -> str:
        """The name of the unit that values of this kind are kept in."""
        return next(iter(self.units))

    def find(self, spelling: str) -> Unit | None:
        """The unit meant by a spelling as typed, or None."""
        joined = _JOINTS.sub(".", spelling)
        return self.exact.get(joined) or self.folded.get(joined.casefold())

    def near(self, spelling: str) -> Unit | None:
        """The unit a spelling is a slip for: wrong case first, then a near miss. None if nothing is close, or two units are."""
        joined = _JOINTS.sub(".", spelling).casefold()
        caseless: dict[str, set[str]] = {}
        for known, unit in self.exact.items():
            caseless.setdefault(known.casefold(), set()).add(unit.name)
        meant = caseless.get(joined) or caseless.get(_closest(joined, list(caseless))) or set()
        return self.units[meant.pop()] if len(meant) == 1 else None


def _closest(word: str, known: list[str]) -> str:
    from difflib import get_close_matches  # only a wrong spelling pays for it

    if word[:1] in _PREFIXES and word[1:] in known:
        return "\0"  # "cNm" is no slip for "Nm", but a hundredth of it
    return next(iter(get_close_matches(word, known, n=1, cutoff=0.75)), "\0") if len(word) > 2 else "\0"


_PREFIXES = frozenset("pnuµμmcdkg")


@cache
def kinds() -> Mapping[str, Kind]:
    """Every kind of quantity by its key."""
    text = files("undertrim.record").joinpath("data", "units.toml").read_text(encoding="utf-8")
    return {key: _kind(key, table) for key, table in tomllib.loads(text).items()}


def _kind(key: str, table: Mapping[str, Any]) -> Kind:
    units = {name: _unit(name, row) for name, row in table["units"].items()}
    return Kind(
        key=key,
        name=table["name"],
        example=table["example"],
        offer=tuple(table["offer"]),
        negative=table.get("negative", False),
        whole=table.get("whole", False),
        clock=table.get("clock", False),
        of_one=table.get("of_one", False),
        units=units,
        others=tuple(_other(row) for row in table.get("other", ())),
        exact={word: unit for unit in units.values() for word in unit.spellings},
        folded={word.casefold(): unit for unit in units.values() if unit.any_case for word in unit.spellings},
    )


def _unit(name: str, row: Mapping[str, Any]) -> Unit:
    return Unit(
        name=name,
        symbol=row.get("symbol", name),
        factor=Fraction(row["factor"]),
        offset=Fraction(row.get("offset", "0")),
        spellings=tuple(row["spellings"]),
        any_case=row.get("any_case", False),
        fractions=row.get("fractions", False),
        mark=row.get("mark", 1),
        system=row.get("system", ""),
    )


def _other(row: Mapping[str, Any]) -> Other:
    return Other(row["from"], row["to"], row.get("below", float("inf")), row["decimals"])
