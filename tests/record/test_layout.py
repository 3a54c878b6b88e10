"""A record is laid out the one way, says what it said, and keeps each comment with what it speaks of."""

import random
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undertrim.record.examples import typed
from undertrim.record.layout import CannotLayOut, laid_out, shorter
from undertrim.record.migrations.marked import comments
from undertrim.record.source import read_text
from undertrim.record.spreading import spread

ROOT = Path(__file__).parents[2]
PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")

MESSY = """# top
demo:   yes
format: 2   # the second
vehicle: {make: Brindleway, model: Otter,   # by its badge
  built: {to: 2018-01, from: 2014-01},
  drive_side: [left], high_voltage: no}
openings:

  dash:
    behind: radio
    kind: receiver
    name: Radio opening

    depth:
      datum: face
      clear: 170 mm
    # what it takes
    kit: needed
# all of them
parts:
    dash:
        source: e1
        parts:

            # the trim
            trim:
                how: |
                    Lift it.

                    Keep it.
                release: lift   # by hand
                held_by:
                    # above
                    - clip: push
                      count: 2
                    - {hook: tab, count: 1}
                    # below them
            radio: {release: slide, after: trim, how: "Draw it, slowly."}
    lone:
        release: pull
evidence: {e1: {how: seen, on: 2026-03-02, by: rk, car: '2016'}}
cars:
  red: '2016'
# the end
"""

NEAT = """# top
format: 2  # the second
demo: yes

vehicle: {make: Brindleway, model: Otter,   # by its badge
  built: {to: 2018-01, from: 2014-01},
  drive_side: [left], high_voltage: no}

cars:
  red: '2016'

evidence:
  e1: {how: seen, on: 2026-03-02, by: rk, car: '2016'}

# all of them
parts:
  dash:
    source: e1
    parts:
      # the trim
      trim:
        release: lift  # by hand
        held_by:
          # above
          - {clip: push, count: 2}
          - {hook: tab, count: 1}
          # below them
        how: |
          Lift it.

          Keep it.
      radio:
        after: trim
        release: slide
        how: "Draw it, slowly."

  lone:
    release: pull

openings:
  dash:
    name: Radio opening
    kind: receiver
    behind: radio
    # what it takes
    kit: needed
    depth: {clear: 170 mm, datum: face}
# the end
"""


def neat(text: str, kind: str = "vehicle") -> str:
    return laid_out(read_text(text, PATH), kind)


def test_one_layout_with_each_comment_at_its_place() -> None:
    assert neat(MESSY) == NEAT
    assert neat(NEAT) == NEAT


def test_line_ends_stay() -> None:
    assert neat(MESSY.replace("\n", "\r\n")) == NEAT.replace("\n", "\r\n")


@pytest.mark.parametrize("text", ["a: [\n", "", "[1, 2]\n", "a: 1\na: 2\n"])
def test_what_cannot_be_read_stays(text: str) -> None:
    with pytest.raises(CannotLayOut):
        neat(text)


SHIPPED = sorted((ROOT / "records").glob("vehicles/*/*.yaml")) + sorted((ROOT / "records").glob("gear/*/*.yaml"))


@pytest.mark.parametrize("path", [path for path in SHIPPED if "vehicles" in path.parts], ids=lambda path: path.stem)
def test_a_record_taken_apart_is_put_together_again(path: Path) -> None:
    """All on one line, every text quoted: the facts are the same again, and so is the layout the second time."""
    data = read_text(path.read_text(encoding="utf-8"), path).data
    made = neat(typed(data) + "\n")
    assert read_text(made, path).data == data
    assert neat(made) == made
    assert len(made.splitlines()) > len(data)


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 2**32), st.sampled_from([path for path in SHIPPED if "vehicles" in path.parts]))
def test_comments_anywhere_stay_and_are_laid_out_once(seed: int, path: Path) -> None:
    """Comments above and behind lines drawn at random; blank lines too."""
    draw = random.Random(seed)  # noqa: S311 - nothing secret
    lines = []
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines()):
        choice = draw.random()
        if choice < 0.05:
            lines.append(f"{' ' * (len(line) - len(line.lstrip()))}# above {number}")
        lines += [""] if 0.05 < choice < 0.1 else []
        lines.append(f"{line}  # beside {number}" if 0.1 < choice < 0.14 and line.strip() else line)
    text = "\n".join([*lines, ""])
    made = neat(text)
    assert sorted(comments(made)) == sorted(comments(text))
    assert neat(made) == made
    assert read_text(made, path).data == read_text(text, path).data
    beside = {line.partition("  # beside ")[2]: line for line in made.splitlines() if "  # beside " in line}
    for number, line in enumerate(lines):
        if "  # beside " in line and line.lstrip()[0] not in "-}]" and ":" in line:
            mark = line.partition("  # beside ")[2]
            assert line.lstrip().split(":")[0] in beside[mark], number


def test_shorter_says_the_same() -> None:
    long = NEAT.replace(
        "        release: lift  # by hand\n", "        release: lift\n        direction: up\n        takes: 1 min\n"
    ).replace("      radio:\n", "      radio:\n        name: Radio\n")
    made = neat(shorter(read_text(long, PATH)).text)
    assert "        release: [lift, up, 1 min]\n" in made
    assert "name: Radio\n" not in made
    assert spread(read_text(made, PATH)).data == spread(read_text(long, PATH)).data
