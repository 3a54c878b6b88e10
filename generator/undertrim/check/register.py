"""All rules by id. A rule's id is its module's name with hyphens; a new rule is added here, in alphabetical order."""

from functools import cache

from undertrim.check.findings import CollectionRule, GearRule, RecordRule
from undertrim.check.rules import (
    choice_without_mark,
    colour_not_known,
    count_in_text,
    depth_without_datum,
    edges_do_not_add_up,
    fastener_without_count,
    file_name,
    function_stated_twice,
    gap_after_neighbour,
    gear_file_name,
    hook_pulled,
    id_used_twice,
    implausible_quantity,
    mirrored_edge,
    model_years_apart,
    named_but_absent,
    order_cycle,
    overlapping_records,
    pin_outside_plug,
    restraint_undecided,
    route_not_distinct,
    side_word,
    size_in_text,
    state_collision,
    tether_left_open,
    thread_and_head,
    undeclared_variant,
    unreachable_opening,
    unused_evidence,
    unused_part,
    year_range,
)

RECORD_RULES: dict[str, RecordRule] = {
    "choice-without-mark": choice_without_mark,
    "colour-not-known": colour_not_known,
    "count-in-text": count_in_text,
    "depth-without-datum": depth_without_datum,
    "edges-do-not-add-up": edges_do_not_add_up,
    "fastener-without-count": fastener_without_count,
    "file-name": file_name,
    "function-stated-twice": function_stated_twice,
    "hook-pulled": hook_pulled,
    "id-used-twice": id_used_twice,
    "implausible-quantity": implausible_quantity,
    "mirrored-edge": mirrored_edge,
    "model-years-apart": model_years_apart,
    "named-but-absent": named_but_absent,
    "order-cycle": order_cycle,
    "pin-outside-plug": pin_outside_plug,
    "restraint-undecided": restraint_undecided,
    "route-not-distinct": route_not_distinct,
    "side-word": side_word,
    "size-in-text": size_in_text,
    "state-collision": state_collision,
    "tether-left-open": tether_left_open,
    "thread-and-head": thread_and_head,
    "undeclared-variant": undeclared_variant,
    "unreachable-opening": unreachable_opening,
    "unused-evidence": unused_evidence,
    "unused-part": unused_part,
    "year-range": year_range,
}

GEAR_RULES: dict[str, GearRule] = {
    "gear-file-name": gear_file_name,
    "implausible-quantity": implausible_quantity,
    "side-word": side_word,
}

COLLECTION_RULES: dict[str, CollectionRule] = {
    "gap-after-neighbour": gap_after_neighbour,
    "overlapping-records": overlapping_records,
}


@cache
def rule_ids() -> frozenset[str]:
    """The ids of all rules."""
    return frozenset((*RECORD_RULES, *GEAR_RULES, *COLLECTION_RULES))
