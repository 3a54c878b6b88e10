"""The vectors that the page's script is held to: they cover every calculator."""

import json
from collections import Counter

from vectors.electrical import CALLS, FIXED, answered, randoms


def test_every_calculator_is_covered_and_most_are_answered() -> None:
    made = randoms(1, 400)
    assert {name for name, _ in made} == {name for name, _ in FIXED} - {"readings"} == set(CALLS) - {"readings"}
    kinds = Counter("refused" in answered(vector) for vector in made)
    assert kinds[False] > 300
    assert kinds[True] > 5


def test_all_ways_to_decide_occur() -> None:
    binding = Counter(
        tuple(answered(vector)["binding"])
        for vector in randoms(1, 400)
        if vector[0] == "cable" and "refused" not in answered(vector)
    )
    assert {("drop",), ("fuse",)} <= set(binding)


def test_the_same_seed_makes_the_same_vectors() -> None:
    assert randoms(5, 50) == randoms(5, 50) != randoms(6, 50)


def test_answers_are_plain_data() -> None:
    for vector in FIXED:
        assert json.loads(json.dumps(answered(vector))) == answered(vector)
