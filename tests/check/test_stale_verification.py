"""How much a stale stamp says of what changed."""

from rule_pages import Example, compose, say

from undertrim.check.rules import stale_verification


def test_the_first_six_blocks_are_named_and_the_rest_counted() -> None:
    facts = ", ".join(f"parts/p{number}: 00000000" for number in range(9))
    piece = f"verified: {{on: 2026-04-02, by: rk, car: '2016', facts: {{{facts}}}}}\n"
    example = Example({"brindleway/otter-2014-2018.yaml": compose(piece)}, ())
    [(_, _, message)] = say(example, stale_verification)
    named = ", ".join(f"'parts/p{number}'" for number in range(6))
    assert f"; removed {named} and 3 more (" in message


def test_a_record_without_a_stamp_has_nothing_to_be_stale() -> None:
    assert (
        say(
            Example({"brindleway/otter-2014-2018.yaml": compose("duties:\n  clock: {kept_by: stays}\n")}, ()),
            stale_verification,
        )
        == []
    )
