"""The text of a visit is read and written by the pages as by the commands: any visit to the shipped vehicles, and what is no visit to them."""

import json
import random
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from in_node import Run
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.procedure.planning import targets
from undertrim.derive.visit import text
from undertrim.derive.visit.between import kinds
from undertrim.derive.visit.understanding import understood
from undertrim.publish.encoding import said
from undertrim.publish.facts import targets as target_facts
from undertrim.publish.facts.visit_words import visit_words
from undertrim.publish.web import pages
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
EACH = 60
AGAIN = "(all) => all.map(([known, text]) => { const visit = visit_text.read(text, known); return [visit_text.write(visit, known), visit.unread]; })"


@pytest.fixture(scope="module")
def vehicles(tmp_path_factory: pytest.TempPathFactory) -> list[Vehicle]:
    """The shipped ones, the dash of the Finch in a form for each radio."""
    folder = tmp_path_factory.mktemp("forms")
    shutil.copytree(ROOT / "records", folder / "records")
    file = folder / "records/vehicles/kelbrook/finch-2014-2018.yaml"
    old = "depth: {clear: 172 mm, datum: face,"
    new = "depth: {clear: [{when: {radio: plain}, is: 172 mm}, {when: {radio: map}, is: 168 mm}], datum: face,"
    assert file.read_text("utf-8").count(old) == 1
    file.write_text(file.read_text("utf-8").replace(old, new), "utf-8")
    place = Workspace(folder)
    shelf = stock(place)
    entries = [place.load(path) for path in place.files([place.records / "vehicles"])]
    return [Vehicle(entry.record, entry.address, shelf, clearances()) for entry in entries if isinstance(entry.record, VehicleRecord)]  # fmt: skip


def known(vehicle: Vehicle) -> Any:
    """What a page of the vehicle knows of its words."""
    facts = {"address": vehicle.address, "targets": target_facts.targets(vehicle.record), "variants": []}
    return json.loads(str(pages.choosing(said({**facts, "visit_words": visit_words(vehicle.record)}))))


def asked(vehicle: Vehicle, chance: random.Random) -> Iterator[str]:
    """Words of a visit in any order: jobs by any of their names, answers, gear and what stands between."""
    record = vehicle.record
    every = [str(target) for target in targets(record)] + [name for one in record.openings.values() for name in (one.id, one.written)]  # fmt: skip
    some = chance.sample(every, chance.randint(0, min(4, len(every))))
    if some:
        yield f"jobs={','.join(some)}"
    for name, variant in cars.variants(record).items():
        if chance.random() < 0.5:
            yield f"{name}={chance.choice(list(variant.choices))}"
    for opening in record.openings.values():
        if chance.random() < 0.4 and (taken := vehicle.stock.taken(opening)):
            yield f"{chance.choice([opening.id, opening.written])}={chance.choice([*taken]).id}"
        for kind, one in kinds(opening).items():
            suiting = [item.id for item in vehicle.stock.of(one) if item.conditions(vehicle.address, opening.written)]
            if suiting and chance.random() < 0.3:
                yield f"{opening.written}.{kind}={','.join(chance.sample(suiting, min(len(suiting), 1 if kind == 'leads' else 2)))}"


def random_texts(vehicle: Vehicle) -> Iterator[str]:
    chance = random.Random(vehicle.address)  # noqa: S311 - repeatable picks of visits
    for _ in range(EACH):
        words = list(asked(vehicle, chance))
        chance.shuffle(words)
        yield "&".join(words)


def test_every_visit_is_read_and_written_as_the_commands_do(run: Run, vehicles: list[Vehicle]) -> None:
    cases = [(vehicle, words) for vehicle in vehicles for words in random_texts(vehicle)]
    by_vehicle = {vehicle.address: known(vehicle) for vehicle in vehicles}
    told = run(AGAIN, [[by_vehicle[vehicle.address], words] for vehicle, words in cases], "visit-text")
    good = 0
    for (vehicle, words), (written, unread) in zip(cases, told, strict=True):
        found = understood(vehicle, text.parse(f"x?{words}"))
        if not (found.said or found.absent):
            good += 1
            assert (written, unread) == (text.words(found.visit), []), words
    assert good > len(cases) / 4
    assert any("dash-map" in written or "dash-plain" in written for written, _ in told)
    assert any(".kit=" in written for written, _ in told)


WRONG = [
    ("jobs=dash,gone", "jobs=dash", ["jobs=gone"]),
    ("jobs=dash&radio=none", "jobs=dash", ["radio=none"]),
    ("jobs=dash&mood=good", "jobs=dash", ["mood=good"]),
    ("jobs=dash&radio", "jobs=dash", ["radio"]),
    ("jobs=dash&radio=%FF", "jobs=dash", ["radio=%FF"]),
    ("jobs=dash&radio=map&radio=plain", "jobs=dash&radio=map", ["radio=plain"]),
    ("jobs=dash&constructor=x&__proto__=y", "jobs=dash", ["constructor=x", "__proto__=y"]),
    ("jobs=dash&rear-door=pellworth-brae-10", "jobs=dash", ["rear-door=pellworth-brae-10"]),
    ("jobs=dash&dash.mood=good", "jobs=dash", ["dash.mood=good"]),
    ("jobs=dash-plain&radio=map", "radio=map", ["jobs=dash-plain"]),
    ("jobs=%3Cb%3E", "", ["jobs=%3Cb%3E"]),
]


def test_what_is_no_word_of_the_vehicle_is_given_back(run: Run, vehicles: list[Vehicle]) -> None:
    finch = next(vehicle for vehicle in vehicles if vehicle.address.endswith("finch-2014-2018"))
    told = run(AGAIN, [[known(finch), words] for words, _, _ in WRONG], "visit-text")
    assert told == [[written, unread] for _, written, unread in WRONG]
    for words, written, _ in WRONG:
        found = understood(finch, text.parse(f"x?{words}"))
        assert found.said or found.absent, words
        assert text.words(found.visit) == written or found.absent, words


def test_a_name_that_is_two_things_and_odd_letters_are_written_alike(run: Run) -> None:
    words = {
        "variants": {"dash": ["a b", "é!'()*"], "jobs": ["x,y"]},
        "written": {"dash": "dash"},
        "between": {"dash": []},
    }
    target = {"id": "dash", "opening": "dash", "side": "", "name": "Dash", "mark": "D", "clauses": {}}
    data = {"address": "a/b", "targets": [target], "variants": {}, "words": words}
    texts = ["jobs=dash&dash.choice=a%20b", "dash.choice=%C3%A9%21%27%28%29%2A", "jobs=dash&dash.gear=some", "jobs=dash&dash=x"]  # fmt: skip
    told = run(AGAIN, [[data, one] for one in texts], "visit-text")
    assert told == [[texts[0], []], [texts[1], []], ["jobs=dash", []], ["jobs=dash", ["dash=x"]]]
