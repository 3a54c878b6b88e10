"""Every rule does what its page says: the bad examples are caught in the marked lines, the good ones pass."""

import importlib
import pkgutil

import pytest
from rule_pages import examples, say, sections

from undertrim.check import rules
from undertrim.check.findings import Rule
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES, RECORD_RULES

RULES: dict[str, Rule] = {**RECORD_RULES, **GEAR_RULES, **COLLECTION_RULES}


def test_every_rule_module_is_registered_under_its_own_name() -> None:
    modules = {name.replace("_", "-") for _, name, _ in pkgutil.iter_modules(rules.__path__)}
    assert modules == set(RULES)
    assert list(RECORD_RULES) == sorted(RECORD_RULES)
    assert list(GEAR_RULES) == sorted(GEAR_RULES)
    assert list(COLLECTION_RULES) == sorted(COLLECTION_RULES)
    for name, rule in RULES.items():
        assert importlib.import_module(f"undertrim.check.rules.{name.replace('-', '_')}") is rule


def test_what_a_rule_can_look_at_is_what_it_is_registered_for() -> None:
    """A rule for gear that is only entered for cars would pass its page and look at no gear."""
    for name, rule in RULES.items():
        assert hasattr(rule, "check") == (name in RECORD_RULES), name
        assert hasattr(rule, "check_gear") == (name in GEAR_RULES), name
        over_all = hasattr(rule, "check_all") != hasattr(rule, "meetings")
        assert over_all == (name in COLLECTION_RULES), name


@pytest.mark.parametrize("name", RULES)
def test_page_has_its_sections(name: str) -> None:
    doc = RULES[name].__doc__ or ""
    assert list(sections(doc)) == ["What it finds", "Why it matters", "Bad", "Good"]
    assert doc.splitlines()[0].endswith(".")
    assert examples(doc, "Bad")
    assert examples(doc, "Good")


@pytest.mark.parametrize("name", RULES)
def test_bad_examples_are_caught_in_the_marked_lines(name: str) -> None:
    for example in examples(RULES[name].__doc__ or "", "Bad"):
        said = say(example, RULES[name])
        assert [text for _, _, text in said] == list(example.messages)
        assert sorted({(file, line) for file, line, _ in said}) == sorted(example.guilty)


@pytest.mark.parametrize("name", RULES)
def test_good_examples_pass(name: str) -> None:
    for example in examples(RULES[name].__doc__ or "", "Good"):
        assert say(example, RULES[name]) == []
