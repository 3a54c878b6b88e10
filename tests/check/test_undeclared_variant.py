"""Conditions on variants and choices that are not there."""

from fragments import findings, subject

from undertrim.check.rules import undeclared_variant

PIECE = """
variants:
  radio:
    ask: Which radio?
    choices:
      plain: {label: Plain, tell: Six keys}
      map: {label: Map, tell: A MAP key}
parts:
  radio:
    name: Radio
    release: slide
    when:
      radio:
        - plain
        - mapp
    replaced: yes
"""


def test_of_a_list_the_wrong_choice_is_pointed_at() -> None:
    (found,) = findings(undeclared_variant, PIECE)
    assert found.pointer == ("parts", "radio", "when", "radio", 1)


def test_where_the_variants_were_refused_nothing_is_called_undeclared() -> None:
    about = subject(PIECE.replace("map: {label: Map, ", "map: {"))
    assert about.entry.problems
    assert list(undeclared_variant.check(about)) == []


def test_a_condition_anywhere_is_looked_at() -> None:
    after = "after_battery:\n  after:\n    clock: {do: Set the clock., when: {body: van}}\n"
    (found,) = findings(undeclared_variant, after)
    assert found.pointer == ("after_battery", "after", "clock", "when", "body")
