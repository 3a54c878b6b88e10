"""Vehicle identification numbers are read by the pages as by the program: published ones, random ones, and what is none."""

import random
from typing import Any

from in_node import Run
from undertrim import resources
from undertrim.derive import vin

PATTERNS: list[tuple[str, dict[str, list[str]]]] = [
    ("00KFN1", {}),
    ("00KFN1P", {"radio": ["plain"]}),
    ("00KFN1M", {"radio": ["map", "plain"]}),
    ("00KFN1.1", {"drive-side": ["left"], "radio": ["map"]}),
]
ASKED = """({ table, patterns, texts }) => texts.map((text) => {
  const one = finder_vin.normal(text);
  if (!finder_vin.isVin(one, table)) return [one, finder_vin.misread(one, table)];
  const years = [true, false, null].map((light) => finder_vin.modelYears(one, table, light, 2027));
  return [one, finder_vin.checkDigit(one, table), finder_vin.checks(one, table), finder_vin.asksCheck(one, table), years, finder_vin.answers(one, patterns.map(([pattern, said]) => [pattern, said, ""]))];
})"""


def told(text: str) -> list[Any]:
    one = vin.normal(text)
    if not vin.is_vin(one):
        return [one, vin.misread(one)]
    years = [list(vin.model_years(one, light=light, latest=2027)) for light in (True, False, None)]
    return [one, vin.check_digit(one), vin.checks(one), vin.asks_check(one), years, vin.answers(one, PATTERNS)]


def test_both_read_the_same(run: Run) -> None:
    chance = random.Random(565)  # noqa: S311 - repeatable numbers
    letters = resources.table("vin")["alphabet"]
    made = ["".join(chance.choices(letters, k=17)) for _ in range(400)]
    made += ["00KFN1" + "".join(chance.choices("PM1", k=2)) + "".join(chance.choices(letters, k=9)) for _ in range(100)]
    odd = ["1m8gdm9a xkp-042788", "IM8GDM9AXKP042788", "KELBROOKFINCHFIVE", "finch 16", "", "1M8GDM9AXKP04278"]
    texts = [*made, *odd]
    asked = {"table": resources.table("vin"), "patterns": PATTERNS, "texts": texts}
    assert run(ASKED, asked, "finder-vin") == [told(text) for text in texts]
