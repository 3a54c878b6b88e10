"""All rules by id. A rule's id is its module's name with hyphens; a new rule is added here, in alphabetical order."""

from functools import cache

from undertrim.check.findings import CollectionRule, GearRule, RecordRule
from undertrim.check.rules import (
    named_but_absent,
)

RECORD_RULES: dict[str, RecordRule] = {
    "named-but-absent": named_but_absent,
}

GEAR_RULES: dict[str, GearRule] = {}

COLLECTION_RULES: dict[str, CollectionRule] = {}


@cache
def rule_ids() -> frozenset[str]:
    """The ids of all rules."""
    return frozenset((*RECORD_RULES, *GEAR_RULES, *COLLECTION_RULES))
