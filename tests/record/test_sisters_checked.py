"""Where nothing can be taken from another record, what the rules find, and what is remembered of both."""

from pathlib import Path

import pytest

from sisters import ALL, OTTER, VOLE, Place, faults
from undertrim.check import runner
from undertrim.check.copies import sections
from undertrim.record.digests import Digests
from undertrim.record.store import Workspace


@pytest.fixture
def place(tmp_path: Path) -> Place:
    return Place(tmp_path)


# Where nothing can be taken


LINKS = [
    ("  oter-2014-2018: {parts: all}\n", "no record 'oter-2014-2018'", "did you mean 'otter-2014-2018'?"),
    ("  vole-2015-2018: {parts: all}\n", "a record cannot take from itself", "name the record of the other car"),
    ("  otter-2014-2018: {parts: dahs}\n", "'brindleway/otter-2014-2018' has no 'dahs' under 'parts'", "did you mean 'dash'?"),
    ("  otter-2014-2018: {runs: all}\n", "'brindleway/otter-2014-2018' has nothing under 'runs'", "leave it out"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "wanted", "way"), LINKS)
def test_a_broken_link_is_told_with_the_way_out_and_nothing_that_follows(
    place: Place, text: str, wanted: str, way: str
) -> None:
    assert faults(place.vole("shares:\n" + text)) == [(7, wanted, way)]


def test_two_makes_with_one_id_are_told_apart(place: Place) -> None:
    place.write("wetmoor/otter-2014-2018", OTTER.replace("Brindleway", "Wetmoor"))
    [(line, said, way)] = faults(place.vole(ALL))
    assert (line, said) == (7, "several makes have 'otter-2014-2018'")
    assert way == "say brindleway/otter-2014-2018 or wetmoor/otter-2014-2018"
    assert place.record(ALL.replace("otter", "brindleway/otter", 1)).parts


def test_what_a_record_takes_it_does_not_pass_on_so_that_no_circle_can_be(place: Place) -> None:
    place.write("brindleway/otter-2014-2018", OTTER + "shares: {vole-2015-2018: {runs: all}}\n")
    [(_, said, _)] = faults(place.vole(ALL))
    assert said == "'brindleway/otter-2014-2018' takes from another record itself, and what it has is not passed on"


def test_from_a_record_with_faults_nothing_is_taken_and_they_are_told_there_alone(place: Place) -> None:
    place.write("brindleway/otter-2014-2018", OTTER.replace("release: slide", "release: slyde"))
    [(line, said, way)] = faults(place.vole(ALL))
    assert (line, said) == (7, "nothing can be taken from 'brindleway/otter-2014-2018': it has faults of its own")
    assert way.startswith("mend it first: undertrim check ")
    assert "slyde" not in said


def test_a_fact_in_dispute_is_not_taken_until_it_is_stated_here_or_settled(place: Place) -> None:
    dispute = "conflicts:\n  depth: {about: openings/front-door/depth/clear, claims: [[64 mm, e1], [61 mm, e1]]}\n"
    place.write("brindleway/otter-2014-2018", OTTER + dispute)
    [(_, said, _)] = faults(place.vole(ALL))
    assert "disagrees on 'openings/front-door/depth/clear'" in said
    stated = place.record(ALL + "openings:\n  front-door: {depth: {clear: 61 mm, datum: skin}, source: e1}\n")
    assert ("openings", "front-door", "depth") not in stated.taken


def test_format_1_shares_nothing(place: Place) -> None:
    found = place.vole(ALL, head=VOLE.replace("format: 2", "format: 1"))
    assert any("shares" in said for _, said, _ in faults(found))


# What the rules find


def test_a_link_into_what_is_not_taken_leads_to_the_line_that_asks(place: Place) -> None:
    text = "shares:\n  otter-2014-2018:\n    variants: all\n    parts: [radio, front-door]\n    openings: [dash, front-door]\n"
    found = [item for item in place.told(text) if item[1] == "named-but-absent"]
    assert sorted(found) == [
        (9, "named-but-absent", "in what is taken as 'parts/radio': no part or preparation 'brace'"),
        (9, "named-but-absent", "in what is taken as 'parts/radio': no part or preparation 'vent'"),
    ]


def test_a_condition_on_a_variant_that_is_not_here_is_told(place: Place) -> None:
    found = place.told(ALL.replace("variants: all, ", ""), "error")
    assert {rule for _, rule, _ in found} == {"undeclared-variant"}
    assert {line for line, _, _ in found} == {7}


def test_what_is_wrong_over_there_is_told_there_alone(place: Place) -> None:
    place.write(
        "brindleway/otter-2014-2018",
        OTTER.replace("name: Upper vent, ", "name: Upper vent, how: Pull the 9 clips off., "),
    )
    place.vole(ALL)
    found = [item for item in runner.check(Workspace(place.folder)).problems if item.rule == "count-in-text"]
    assert [item.file.stem for item in found] == ["otter-2014-2018"]
    here = place.told(ALL + "parts:\n  vent: {how: Pull the 9 clips off the top., source: e1}\n")
    assert [rule for _, rule, _ in here if rule == "count-in-text"]


def test_what_is_shared_is_no_copy_and_lacks_no_source(place: Place) -> None:
    rules = {rule for _, rule, _ in place.told(ALL)}
    assert rules.isdisjoint({"record-copied", "measurement-without-source", "said-twice", "shared-in-vain"})


def test_only_what_a_record_says_itself_can_be_a_copy(place: Place) -> None:
    assert sections(place.vole(ALL)) == {}
    place.write("brindleway/otter-2014-2018", OTTER)
    assert sections(Workspace(place.folder).load(place.folder / "records/vehicles/brindleway/otter-2014-2018.yaml"))


def test_one_file_can_be_checked_alone(place: Place) -> None:
    path = place.vole(ALL).path
    report = runner.check(Workspace(place.folder), [path])
    assert report.records == 1
    assert [item for item in report.problems if item.level == "error"] == []


# What is remembered


def test_a_record_is_looked_at_again_when_what_it_takes_from_changes(place: Place) -> None:
    space, path = Workspace(place.folder), place.vole(ALL).path
    before = space.beside_state(path, Digests())
    place.write("brindleway/heron-2014-2018", OTTER.replace("Otter", "Heron"))
    assert space.beside_state(path, Digests()) == before  # it takes nothing from that one
    place.write("brindleway/otter-2014-2018", OTTER.replace("182 mm", "181 mm"))
    assert space.beside_state(path, Digests()) != before
    assert space.beside_state(path.parents[1] / "brindleway/otter-2014-2018.yaml", Digests()) == ""


def test_a_record_that_comes_to_be_there_counts_too(place: Place) -> None:
    space, path = Workspace(place.folder), place.vole(ALL.replace("otter", "heron")).path
    before = space.beside_state(path, Digests())
    place.write("brindleway/heron-2014-2018", OTTER.replace("Otter", "Heron"))
    assert space.beside_state(path, Digests()) != before
