"""The calculators of the site give the program's numbers and words: published examples and random ones."""

import pytest

from in_node import Run
from undertrim.publish.facts import electrical_tables
from undertrim.words import Language, speaking
from undertrim.words.catalogue import context, english, rooms, texts
from undertrim.words.language import Text
from vectors.electrical import FIXED, Vector, answered, randoms
from vectors.printed import printed

MODULES = [f"electrical-{name}" for name in ("numbers", "drop", "fuses", "cable", "sound", "crossover")]
EACH = """({ tables, vectors }) => {
  electrical_numbers.use(tables);
  const electrical = { ...electrical_drop, ...electrical_fuses, ...electrical_cable, ...electrical_sound, ...electrical_crossover };
  return vectors.map(([name, asked]) => {
    try { return electrical[name](asked); }
    catch (error) { if (error instanceof electrical_numbers.Refused) return { refused: error.message, hint: error.hint }; throw error; }
  });
}"""


def compare(run: Run, vectors: list[Vector]) -> None:
    answers = run(
        EACH, {"tables": electrical_tables.tables(), "vectors": [list(vector) for vector in vectors]}, *MODULES
    )
    assert len(answers) == len(vectors)
    for vector, answer in zip(vectors, answers, strict=True):
        assert printed(answered(vector)) == printed(answer), vector


def test_published_examples(run: Run) -> None:
    compare(run, FIXED)


@pytest.mark.parametrize("seed", [20261125, 4])
def test_random_ones(run: Run, seed: int) -> None:
    compare(run, randoms(seed, 1500))


def marked() -> Language:
    """A language with a decimal comma in which every sentence is marked."""
    said: dict[tuple[str, Text], Text] = {}
    for room in rooms():
        for name, entry in english(room).items():
            for part, text in texts(entry).items():
                form = f"[{text}]" if isinstance(text, str) else tuple(f"[{one}]" for one in text)
                said[context(f"{room}/{name}", part), text] = form
    return Language("xx", said, decimal_mark=",")


def test_another_language_is_spoken_alike(run: Run) -> None:
    with speaking(marked()):
        compare(run, [*FIXED, *randoms(9, 300)])
        assert answered(("rest", {"capacity": 60, "current": 0.55}))["headline"].startswith("[[2,273 days]")


@pytest.mark.parametrize("value", ["NaN", "Infinity", "undefined", "'60'"])
def test_what_is_no_number_is_refused(run: Run, value: str) -> None:
    asking = f"electrical_sound.gain({{ power: {value}, load: 4 }})"
    program = f"(tables) => {{ electrical_numbers.use(tables); try {{ return {asking}; }} catch (error) {{ return error.message; }} }}"
    assert run(program, electrical_tables.tables(), *MODULES) == "the power is not a number"
