"""The form beside an opening gives the program's verdicts, numbers and words: the worked examples and random questions."""

from typing import Any

import pytest

from in_node import Run
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.verdict import KINDS
from undertrim.publish.encoding import said as said_data
from undertrim.publish.facts.shelf import length_units
from undertrim.record.units import UnitError, parse, show
from undertrim.words import Language, say
from vectors.fit import FIXED, Case, said
from vectors.fit_load import asked_load, loads, said_load
from vectors.fit_random import randoms
from vectors.printed import printed

EACH = """({ units, cases }) => {
  lengths.use(units);
  const fit = { speaker: fit_speaker.speaker, receiver: fit_receiver.receiver };
  return cases.map((one) => fit[one.kind](one.gear, one.opening, one.between, one.usual));
}"""


def compare(run: Run, cases: list[Case]) -> list[str]:
    answers = run(
        EACH,
        {"units": said_data(length_units()), "cases": [case.asked() for case in cases]},
        "lengths",
        "fit-speaker",
        "fit-receiver",
    )
    for case, answer in zip(cases, answers, strict=True):
        assert printed(said(case.answer())) == printed(answer), case
    return [answer["kind"] for answer in answers]


def test_worked_examples(run: Run) -> None:
    assert compare(run, list(FIXED)) == [case.kind for case in FIXED]


@pytest.mark.parametrize("seed", [20261125, 7, 365])
def test_random_questions(run: Run, seed: int) -> None:
    kinds = compare(run, randoms(seed, 500))
    assert all(kinds.count(kind) > 4 for kind in KINDS)


LOAD = "(all) => all.map((one) => fit_load.load({ impedance: one.parts[0].impedance }, one))"


@pytest.mark.parametrize("seed", [20261126, 11])
def test_random_loads(run: Run, seed: int) -> None:
    cases = loads(seed, 400)
    answers = run(LOAD, [asked_load(*case) for case in cases], "fit-load")
    for case, answer in zip(cases, answers, strict=True):
        ours = said_load(*case)
        assert printed(ours) == printed({key: answer[key] for key in ours}), case
    assert {answer["verdict"] for answer in answers} == {"fits", "marginal", "fails", "unknown"}


READ = """({ units, texts }) => {
  lengths.use(units);
  return texts.map((text) => {
    try { const found = lengths.read(text); return { text: found.text, shown: found.shown, both: lengths.both(found.value), step: lengths.both(found.step) }; }
    catch (error) { return { message: error.message, hint: error.hint }; }
  });
}"""
LENGTHS = (
    "62 mm", "6.2 cm", "0.062 m", "2 3/16 in", "2-3/16 in", '7/32"', "2 in", "2.19 in", "1 1/3 in", "  62   mm ", ".5 mm", "62mm", "2 ft",
    "1200 mm", "0.4 mm", "0 mm", "300.05 mm", "MM 62", "62 IN", "2 7⁄8 in", "62.123456789012345678 mm", "1/64 in", "4.7625 mm", "2.125 mm", "2.675 mm", "0.005 mm", "31/32 in", "12345.678 mm",
    "0.000001 mm", "62", "7/32", "-62", "62 furlong", "62 milimetres", "7/32 milimetre",
    "62 M", "62 min", "62 kΩ", "10 N m", "10 in-lb", "62,5 mm", "1,200 mm", "1e3 mm", "2½ in", "5-6 mm", "5 to 6 mm", "5/4 in", "6/4 mm",
    "2 5/4 in", "1/0 in", "3/8 mm", "-3 mm", "−1/2 in", "", "a mm", "٦٢ mm", "62 m\x1bm", "62\u2028mm", "1" * 41, "½" * 41,
)  # fmt: skip


def test_lengths_are_read_as_the_program_reads_them(run: Run) -> None:
    answers = run(READ, {"units": said_data(length_units()), "texts": LENGTHS}, "lengths")
    assert dict(zip(LENGTHS, answers, strict=True)) == {text: read(text) for text in LENGTHS}


COMMA = """(units) => {
  words.learn({ tag: "xx", decimal: ",", forms: "", before: [], texts: {} });
  lengths.use(units);
  return [lengths.both(16.5), lengths.read("2.19 in").shown, lengths.read("2 3/16 in").shown];
}"""


def test_lengths_have_the_decimal_mark_of_the_language(run: Run) -> None:
    shown = run(COMMA, said_data(length_units()), "lengths", "words")
    assert shown == ["16,5 mm (0,65 in)", "2,19 in (55,6 mm)", "2 3/16 in (55,6 mm)"]
    assert shown[0] == say(both(16.5), Language(decimal_mark=","))


def read(text: str) -> dict[str, Any]:
    """A length as Python reads it, or what it says of one that is none."""
    try:
        known = parse(text, "length")
    except UnitError as error:
        return {"message": error.message, "hint": error.hint}
    return {"text": known.text, "shown": show(known), "both": say(both(known.value)), "step": say(both(known.step))}


ROUND = "([values, digits]) => values.map((value) => lengths.round(value, digits))"


@pytest.mark.parametrize("digits", [0, 1, 2])
def test_numbers_are_rounded_as_the_program_rounds_them(run: Run, digits: int) -> None:
    """What lies exactly between two among them: eighths at two decimals, quarters at one, halves at none."""
    values = [number / 8 * sign for number in range(200) for sign in (1, -1)] + [
        number * 0.005 for number in range(400)
    ]
    assert run(ROUND, [values, digits], "lengths") == [round(value, digits) for value in values]
