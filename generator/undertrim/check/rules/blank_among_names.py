"""A list of names holds names.

## What it finds

The word `none`, `unknown`, `no` or the like as an entry of a list that asks for names or texts; where a list may be blank, as
`restraints`, such a word beside names.

## Why it matters

A tech reads "beside this work: none" as the name of an airbag. What nobody knows and what is not there are two things, and
neither is a name.

## Bad

    vehicle: {make: Brindleway, model: Otter, built: {from: 2014-01, to: 2018-01}, drive_side: [left], high_voltage: no, also_called: [none]}    # here
    areas:
      dash: {restraints: [Passenger airbag above the glovebox, unknown]}    # here

warning: 'none' stands among names (leave 'also_called' out where there is nothing to name)
warning: 'unknown' stands among names (write none or unknown alone, or the names alone)

## Good

    areas:
      dash: {restraints: [Passenger airbag above the glovebox]}
      boot: {restraints: [none]}
"""

from collections.abc import Iterator, Sequence

from undertrim.check.findings import Finding, Subject
from undertrim.record.fields import Field
from undertrim.record.problem import Level
from undertrim.words import Message, message, one_of, quoted

LEVEL = Level.WARNING

_WORDS = frozenset({"none", "unknown", "no", "yes", "n/a", "na", "nil", "tbd", "?", "-"})
_LINE = ("common", ("$defs", "line"))


def check(subject: Subject) -> Iterator[Finding]:
    """Every such word in a list of texts that the schema does not offer it in."""
    for field in subject.fields:
        if isinstance(field.value, list):
            yield from _in_list(field)


def _in_list(field: Field) -> Iterator[Finding]:
    item, blanks = field.node.child(0), field.node.schema.get("blanks", ())
    if item is None or item.home != _LINE or (len(field.value) == 1 and field.value[0] in blanks):
        return
    for number, value in enumerate(field.value):
        if isinstance(value, str) and value.casefold() in _WORDS:
            yield Finding((*field.pointer, number), _said(value, str(field.pointer[-1]), blanks))


def _said(value: str, name: str, blanks: Sequence[str]) -> Message:
    if blanks:
        return message("rules/blank-among-names/beside", value=quoted(value), blanks=one_of(*blanks))
    return message("rules/blank-among-names/name", value=quoted(value), field=name)
