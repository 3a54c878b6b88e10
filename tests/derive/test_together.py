"""Whether conditions can meet in one car, against trying every car."""

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from undertrim.derive.cars import together
from undertrim.record.model import When

CHOICES = {"radio": ("plain", "map", "big"), "sound": ("plain", "amplified")}
clauses = st.sampled_from(list(CHOICES)).flatmap(
    lambda name: st.tuples(st.just(name), st.lists(st.sampled_from(CHOICES[name]), min_size=1, unique=True).map(tuple))
)
whens = st.lists(clauses, max_size=2, unique_by=lambda clause: clause[0]).map(lambda found: When(tuple(found)))


@given(st.lists(whens, max_size=4))
def test_together_just_when_some_car_has_them_all(conditions: list[When]) -> None:
    every_car = [dict(zip(CHOICES, choice, strict=True)) for choice in product(*CHOICES.values())]
    assert together(*conditions) == any(all(when.holds(car) for when in conditions) for car in every_car)
