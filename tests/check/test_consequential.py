"""What only follows from what the schema refused is left out, told by ids that a finding carries and never by its words."""

import re
from collections.abc import Iterator

import pytest
from rule_pages import examples, load

from undertrim.check import consequential
from undertrim.check.findings import Finding, Subject
from undertrim.check.register import RECORD_RULES
from undertrim.record.build import KEYED
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data
from undertrim.record.store import Entry
from undertrim.words import message


def ids(data: Data) -> Iterator[str]:
    """Every id of a record."""
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for key, inner in entries:
        if key in KEYED and isinstance(inner, dict):
            yield from map(str, inner)
        yield from ids(inner)


def found(name: str) -> Iterator[tuple[Entry, Finding]]:
    for example in examples(RECORD_RULES[name].__doc__ or "", "Bad"):
        for file, text in example.files.items():
            item = load(file, text)
            if isinstance(item.record, VehicleRecord):
                yield from ((item, finding) for finding in RECORD_RULES[name].check(Subject(item, item.record)))


@pytest.mark.parametrize("name", RECORD_RULES)
def test_a_finding_carries_every_id_that_its_message_names(name: str) -> None:
    for item, finding in found(name):
        quoted = {word for said in re.findall(r"'([^']*)'", finding.message) for word in said.split("/")}
        named = quoted & set(ids(item.source.data))
        assert [word for word in named if word not in map(str, finding.pointer) and word not in finding.about] == []


SAID = message("rules/unused-part/nothing-needs", part="bezel")


def test_words_decide_nothing() -> None:
    """A message that happens to quote a refused id is said, one that rests on it is not, whatever its words are."""
    item = load("brindleway/otter-2014-2018.yaml", "")
    held = consequential.Consequential(item)
    held._names = frozenset({"bezel"})
    held._section, held._dropped = False, frozenset()
    assert not held.hold(Finding(("vehicle",), SAID))
    assert held.hold(Finding(("vehicle",), SAID, about=("bezel",)))
    assert held.hold(Finding(("parts", "bezel", "how"), SAID))
    assert not held.hold(Finding(("vehicle", "bezel"), SAID))
