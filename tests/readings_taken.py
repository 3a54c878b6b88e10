"""Readings as they are typed, and what functions they leave."""

from hypothesis import strategies as st

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.meter import Candidate, consider
from undertrim.derive.wiring.readings import Reading, read


def taken(*texts: str) -> list[Reading]:
    return [read(text) for text in texts]


def one(function: str, *texts: str, behaves: str = "", supply: float | None = None) -> Candidate:
    return consider(functions().functions[function], taken(*texts), behaves, supply)


def readings() -> st.SearchStrategy[list[Reading]]:
    kinds = st.sampled_from(list(functions().kinds))
    states = st.sampled_from(list(functions().states))
    values = st.one_of(st.floats(0, 16), st.floats(0, 1e6), st.just(float("inf")))
    return st.lists(st.builds(Reading, st.just("r"), kinds, states, values, st.just(0.05)), max_size=4)
