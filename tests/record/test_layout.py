"""Records are laid out one way, and say what they said: values, order, comments."""

# Long because a whole record stands in it twice, as it was typed and as it is laid out.

from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings

from odd_texts import records
from pages import ROOT
from undertrim.record import layout, shapes
from undertrim.record.fields import Node, root
from undertrim.record.layout import CannotLay, modeline, texts
from undertrim.record.layout.ordering import AS_TYPED
from undertrim.record.migrations.marked import Text
from undertrim.record.model.basics import States
from undertrim.record.schema import load
from undertrim.record.source import read, read_text
from undertrim.record.store import Workspace
from undertrim.words import sentence

PLACE = Workspace(ROOT)
SHIPPED = PLACE.files()
HERE = Path("records/vehicles/brindleway/otter-2014-2018.yaml")


def laid(text: str, kind: str = "vehicle") -> str:
    source = read_text(text, HERE)
    assert not source.problems, source.problems
    return layout.laid_out(source, kind)


def test_everything_shipped_is_laid_out() -> None:
    assert len(SHIPPED) > 50
    for path in SHIPPED:
        kind = PLACE.kind(path)
        source = read(path)
        assert source.text == layout.laid_out(source, kind, modeline.wanted(path, kind, ROOT)), path
        assert modeline.is_one(source.text.splitlines()[0]), path


@settings(
    max_examples=150,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large],
)
@example('format: 2\n\ndemo:\n  c:\n    -\n      - "  deeper\\n"\n      - |+\n        one\n        two\n\n')
@example("format: 2\n\ndemo:\n  c:\n    - >2\n      one\n      two\n")
@given(records())
def test_odd_texts_are_laid_out_once_and_for_all(text: str) -> None:
    """Nothing is lost: that is proved as it is done. What is laid out already stays as it is."""
    source = read_text(text, HERE)
    if source.problems:
        return
    made = layout.laid_out(source, "vehicle")
    assert layout.laid_out(read_text(made, HERE), "vehicle") == made
    assert ("\r\n" in made) == ("\r\n" in text)
    assert sorted(comments(made)) == sorted(comments(text))


def comments(text: str) -> list[str]:
    marked = Text.of(text)
    return [text[start:end].strip() for start, end in marked.comment_places()]


MESSY = """\
# My first record

openings:
  dash:
    kind: receiver   # the tall one
    behind: [radio]
    depth: {clear: "172 mm",  # to the beam
       datum: face}
    face: {height: 112 mm, width: '182 mm'}
format:   2
vehicle:
      make: "Otter"
      high_voltage: "no"
      drive_side:
      - left
      - right
      # after sides


# the parts
parts:
  dash:
    # all of the group
    parts:

      trim:
        how: |
          Pull.

          Then lift.
        held_by:
        - {count: 4, clip: push}
      # ends the trim

      radio:
        after: [trim]
        how: "Undo the
          screws."
    source: e1
  floor: {release: lift, needs: {glass: up, battery: on}}

# TODO: the doors
"""

TIDY = """\
# My first record

format: 2

vehicle:
  make: Otter
  drive_side:
    - left
    - right
    # after sides
  high_voltage: "no"

# the parts
parts:
  dash:
    source: e1
    # all of the group
    parts:
      trim:
        held_by: {clip: push, count: 4}
        how: |
          Pull.

          Then lift.
      # ends the trim

      radio:
        after: trim
        how: Undo the screws.

  floor:
    needs: {glass: up, battery: on}
    release: lift

openings:
  dash:
    kind: receiver  # the tall one
    behind: radio
    face: {width: 182 mm, height: 112 mm}
    depth:
      clear: 172 mm  # to the beam
      datum: face

# TODO: the doors
"""


def test_a_messy_record_becomes_tidy() -> None:
    assert laid(MESSY) == TIDY
    assert laid(TIDY) == TIDY
    assert laid(MESSY.replace("\n", "\r\n")) == TIDY.replace("\n", "\r\n")


def test_a_group_is_set_off_and_the_things_in_it_are_not() -> None:
    text = "format: 2\nparts:\n  a:\n    release: lift\n  dash:\n    parts:\n      b:\n        release: lift\n      c:\n        release: lift\n  d:\n    release: lift\n"
    made = laid(text).splitlines()
    assert [made[number - 1] for number, line in enumerate(made) if line == ""] == [
        "format: 2",
        "    release: lift",
        "        release: lift",
    ]


def test_a_group_that_only_names_its_things_is_a_line_among_others() -> None:
    text = (
        "format: 2\nfunctions:\n  mute: [absent, e1]\n  data: {functions: [speed, reverse]}\n  illumination: unknown\n"
    )
    assert laid(text).endswith(text.removeprefix("format: 2\n"))


def test_sections_of_one_line_stand_together() -> None:
    lines = "format: 2\ndemo: yes\nrestraint: {wait: none}\nrest: {current: 20 mA}\n"
    parts = "parts:\n  a:\n    release: lift\n"
    assert laid(f"{lines}{parts}") == f"{lines}\n{parts}"


def test_a_list_of_ids_goes_on_as_many_lines_as_it_needs() -> None:
    names = ", ".join(f"a-trim-with-a-long-name-{number}" for number in range(10))
    made = laid(f"format: 2\nparts:\n  x:\n    release: pull\n    after: [{names}]\n")
    lines = made.splitlines()
    assert [line[:14] for line in lines[4:]] == ["    after: [a-", "      a-trim-w", "    release: p"]
    assert max(map(len, lines)) <= 160


def test_a_caution_stands_behind_its_signal_word_on_one_line() -> None:
    said = "cautions: {CAUTION: [Sharp edge., Cut hands., Wear gloves.]}"
    assert f"    {said}\n" in laid(f"format: 2\nparts:\n  x:\n    release: pull\n    {said}\n")
    long = "[" + ", ".join(["A sentence of some fifty characters is what it is."] * 3) + "]"
    made = laid(f"format: 2\nparts:\n  x:\n    release: pull\n    cautions: [{{CAUTION: {long}}}]\n")
    assert f"    cautions:\n      CAUTION: {long}\n" in made


def test_a_line_of_mappings_in_each_other_ends_somewhere_also_with_prose() -> None:
    cable = f"{{name: A cable, kind: cable, how: {'Words ' * 24}here.}}"
    made = laid(f"format: 2\nparts:\n  x:\n    release: pull\n    tethers: {{a: {cable}, b: [A plug, plug, lamps]}}\n")
    assert f"    tethers:\n      a: {cable}\n      b: [A plug, plug, lamps]\n" in made


def test_what_is_wider_than_the_page_stands_below_but_prose_does_not_count() -> None:
    wide = ", ".join(f"Bag {number}" for number in range(20))
    assert f"\n    restraints:\n      - {wide[:5]}\n" in laid(f"format: 2\nareas:\n  dash:\n    restraints: [{wide}]\n")
    prose = "Words " * 30
    one = f"  e1: {{how: seen, on: 2026-03-02, by: rk, note: {prose.strip()}}}\n"
    assert one in laid(f"format: 2\nevidence:\n{one}")


def test_quotes_stay_where_another_reader_would_need_them() -> None:
    for text in ('"no"', '"2026-03-02"', '"0x1F"', '"010"', '"1e5"', '"~"', '"a: b"', '"# b"'):
        assert f"  model: {text}\n" in laid(f"format: 2\nvehicle:\n  model: {text}\n"), text
    for text in ("no", "2026-03-02", "010"):
        assert f"  model: {text}\n" in laid(f"format: 2\nvehicle:\n  model: {text}\n"), text


def test_a_list_of_one_keeps_its_brackets_where_they_say_something() -> None:
    """In format 1, where 'none' would take back what is shared, and where the item would read as the list."""
    assert "behind: [a]" in laid("format: 1\nopenings:\n  x:\n    behind: [a]\n")
    assert "behind: [none]" in laid("format: 2\nopenings:\n  x:\n    behind: [none]\n")
    assert "passes: [[Bulkhead, grommet]]" in laid("format: 2\nruns:\n  x:\n    passes: [[Bulkhead, grommet]]\n")
    assert "behind: a\n" in laid("format: 2\nopenings:\n  x:\n    behind: [a]\n")


def test_what_cannot_be_read_is_refused() -> None:
    for text in ("a: [\n", "format: 2\nformat: 2\n", "", "just words\n", "- a\n"):
        with pytest.raises(CannotLay, match="cannot be read"):
            layout.laid_out(read_text(text, HERE), "vehicle")


def test_a_text_that_would_change_is_not_given(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(texts, "quoted", lambda text: f'"{text}!"')
    with pytest.raises(CannotLay) as refused:
        laid('format: 2\nvehicle: {model: "no"}\n')
    assert sentence(refused.value.said) == "the new text would not say the same at 'vehicle/model'"


def test_a_comment_that_would_move_is_not_given_away(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(layout.laying, "_apart", lambda *_: True)
    text = "format: 2\nvehicle:\n  make: x\n  # of make\n\n  model: y\n"
    assert "# of make\n\n  model" in laid(text)
    monkeypatch.undo()
    found = layout.laying.Laying._children

    def turned(self: layout.laying.Laying, *given: object) -> object:
        lines = list(found(self, *given))  # type: ignore[arg-type]
        return [line for line in lines if line]

    monkeypatch.setattr(layout.laying.Laying, "_children", turned)
    with pytest.raises(CannotLay, match="comment"):
        laid(text)


def test_names_of_the_schema_that_the_model_keeps_in_a_dictionary_keep_their_order() -> None:
    """Of all others the order means nothing: the model has a field for each."""
    assert States == dict[str, str]
    found = {name for name, node in _fields(root("vehicle"), set()) if _plain_names(node)}
    assert found - {"is"} == set(AS_TYPED)


def _fields(node: Node, seen: set[object]) -> list[tuple[str, Node]]:
    if node.home in seen:
        return []
    seen.add(node.home)
    made = []
    for step in (*node.schema.get("properties", ()), "*", 0):
        if child := node.child(step):
            made += [(str(step), child), *_fields(child, seen)]
    return made


def _plain_names(node: Node) -> bool:
    """Whether it has fields of one sort, all of which may be left out, and no source: names that lead to words or counts."""
    fields = node.schema.get("properties", {})
    return (
        bool(fields)
        and not node.schema.get("required")
        and all("enum" in one or one.get("type") == "integer" for one in fields.values())
    )


def test_the_sections_stand_in_the_order_of_the_schema_and_cars_before_what_names_them() -> None:
    order = layout.ordering._sections("vehicle")
    assert [name for name in order if name not in shapes.whole("vehicle").aside] == list(load("vehicle")["properties"])
    assert order[order.index("cars") + 1] == "evidence"
    assert order[order.index("shares") - 1] == "vehicle"
    assert set(shapes.whole("vehicle").aside) == {"cars", "shares"}
