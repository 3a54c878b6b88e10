"""A record that takes from another one: what it has then, what lies over it, and what is told where nothing can be taken."""

from pathlib import Path
from typing import Any

import pytest

from undertrim.check import runner
from undertrim.check.copies import sections
from undertrim.record.digests import Digests
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.sisters import sisters_digest
from undertrim.record.store import Entry, Workspace
from undertrim.words import sentence, way_out

OTTER = """\
format: 2
demo: yes
vehicle: {make: Brindleway, model: Otter, built: {from: 2014-01, to: 2018-01}, drive_side: [left, right], high_voltage: no}
variants:
  radio:
    ask: Which radio?
    choices: {plain: [Plain radio, Knobs], map: [Map radio, A MAP key]}
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, with: Calliper 0.05 mm}
parts:
  dash:
    source: e1
    parts:
      vent: {name: Upper vent, release: pull, direction: up, held_by: {clip: push, count: 4}, takes: 2 min}
      brace: {when: {radio: map}, after: vent, release: unscrew, held_by: {screw: T20, count: 2}, takes: 2 min}
      radio:
        after: [vent, brace]
        release: slide
        direction: rearward
        held_by: {screw: T20, count: 4}
        tethers: {main: [Main plug, plug, sound], map-lead: {name: Map lead, kind: coax, when: {radio: map}}}
        replaced: yes
        takes: 4 min
  front-door:
    each: [left, right]
    source: e1
    parts:
      panel: {release: lift, direction: up, held_by: {clip: push, count: 8}, takes: 5 min}
  seat: {area: seat, release: lift, takes: 4 min, held_by: {bolt: T50, count: 4, role: seat, torque: 40 N.m, source: e1}}
openings:
  dash: {name: Radio opening, kind: receiver, behind: radio, kit: needed, face: {width: 182 mm, height: 112 mm}, depth: {clear: 170 mm}, source: e1}
  front-door:
    name: Front door speakers
    kind: speaker
    behind: panel
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm, datum: skin}
    room_to_grille: unknown
    crash_sensor: no
    source: e1
connectors:
  main:
    name: Main plug
    at: radio/main
    view: wires
    rows: 1
    columns: 4
    source: e1
    pins: {1: [yellow, battery-feed], 2: [black, ground], 3: [red, switched-feed]}
"""
VOLE = """\
format: 2
demo: yes
vehicle: {make: Wetmoor, model: Vole, built: {from: 2015-01, to: 2018-01}, drive_side: [left, right], high_voltage: no}
evidence:
  e1: {how: seen, on: 2026-05-02, by: tw}
"""
ALL = "shares:\n  otter-2014-2018: {variants: all, parts: all, openings: all, connectors: all}\n"


class Place:
    """A workspace of two records."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.write("brindleway/otter-2014-2018", OTTER)

    def write(self, name: str, text: str) -> Path:
        path = self.folder / "records" / "vehicles" / f"{name}.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        return path

    def vole(self, text: str, *, head: str = VOLE) -> Entry:
        return Workspace(self.folder).load(self.write("wetmoor/vole-2015-2018", head + text))

    def record(self, text: str) -> VehicleRecord:
        found = self.vole(text)
        assert found.problems == ()
        assert isinstance(found.record, VehicleRecord)
        return found.record

    def told(self, text: str, level: str = "") -> list[tuple[int, str, str]]:
        """Line, rule and sentence of each problem of the record that takes."""
        self.vole(text)
        found = runner.check(Workspace(self.folder)).problems
        return [
            (item.position.line, item.rule, item.message)
            for item in found
            if "vole" in str(item.file) and level in ("", item.level)
        ]


@pytest.fixture
def place(tmp_path: Path) -> Place:
    return Place(tmp_path)


def faults(found: Entry) -> list[tuple[int, str, str]]:
    return [(item.position.line, sentence(item.said), way_out(item.said)) for item in found.problems]


# What it then has


def test_all_is_taken_by_all_and_some_by_groups_and_ids(place: Place) -> None:
    assert list(place.record(ALL).parts) == ["vent", "brace", "radio", "panel", "seat"]
    some = place.record("shares:\n  brindleway/otter-2014-2018: {parts: [front-door, seat], openings: front-door}\n")
    assert (list(some.parts), list(some.openings), some.variants) == (["panel", "seat"], ["front-door"], {})


def test_what_a_group_shares_and_what_follows_comes_along(place: Place) -> None:
    found = place.record(ALL)
    assert (found.parts["panel"].each, found.parts["panel"].area) == (("left", "right"), "front-door")
    assert (found.openings["front-door"].area, found.parts["seat"].name) == ("front-door", "Seat")


def test_evidence_is_not_inherited_at_any_depth(place: Place) -> None:
    data = place.vole(ALL).source.data

    def sources(value: Any) -> int:
        inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
        return sum(map(sources, inner)) + (isinstance(value, dict) and "source" in value)

    assert sources(data) == 0
    assert list(data["evidence"]) == ["e1"]


def test_a_safety_fact_that_reassures_is_unknown_and_one_that_warns_is_kept(place: Place) -> None:
    found = place.record(ALL)
    assert found.openings["front-door"].crash_sensor == "unknown"
    assert found.parts["seat"].held_by[0].torque is Blank.UNKNOWN
    place.write("brindleway/otter-2014-2018", OTTER.replace("crash_sensor: no", "crash_sensor: yes"))
    assert place.record(ALL).openings["front-door"].crash_sensor == "yes"


def test_whether_a_unit_is_near_is_unknown_until_somebody_looked_at_this_car(place: Place) -> None:
    bay = "  boot: {kind: amplifier, behind: seat, run: way, space: {width: 300 mm, height: 90 mm, depth: 200 mm}, restraint_near: no, source: e1}\n"
    place.write("brindleway/otter-2014-2018", OTTER.replace("connectors:\n", f"{bay}connectors:\n"))
    opening = place.record("shares:\n  otter-2014-2018: {parts: all, openings: boot, variants: all}\n").openings["boot"]
    assert isinstance(opening, AmplifierOpening)
    assert opening.restraint_near == "unknown"


def test_photographs_stay_with_the_car_that_they_show(place: Place) -> None:
    photo = "photos: {file: seat.png, shows: The seat.}, "
    place.write("brindleway/otter-2014-2018", OTTER.replace("seat: {area: seat, ", f"seat: {{area: seat, {photo}"))
    assert place.record(ALL).parts["seat"].photos == ()


@pytest.mark.parametrize("wanted", ["dash", "all", "[dash, front-door]", "dash-map, without: front-door"])
def test_what_differs_between_cars_over_there_goes_by_the_id_it_is_written_under(place: Place, wanted: str) -> None:
    faces = (
        "[{when: {radio: map}, width: 182 mm, height: 146 mm}, {when: {radio: plain}, width: 182 mm, height: 112 mm}]"
    )
    text = OTTER.replace("face: {width: 182 mm, height: 112 mm}", f"face: {faces}")
    assert text != OTTER
    place.write("brindleway/otter-2014-2018", text)
    found = place.record(
        "shares:\n  otter-2014-2018: {variants: all, parts: all, openings: WANTED, connectors: all}\n".replace(
            "WANTED", wanted
        )
    )
    assert {one.written for name, one in found.openings.items() if name in ("dash-map", "dash-plain")} == {"dash"}
    assert {one.named_for for name, one in found.openings.items() if name in ("dash-map", "dash-plain")} == {("radio",)}


def test_areas_and_the_restraint_system_are_never_shared(place: Place) -> None:
    more = "restraint: {wait: 3 min, memory_keeper: allowed, read_faults_first: no, source: e1}\nareas:\n  dash: {restraints: [Bag], source: e1}\n"
    place.write("brindleway/otter-2014-2018", OTTER + more)
    found = place.record(ALL)
    assert (found.restraint, found.areas) == (None, {})
    assert "area" in faults(place.vole("shares:\n  otter-2014-2018: {areas: all}\n"))[0][1]


def test_all_of_it_stands_where_it_is_asked_for(place: Place) -> None:
    found = place.vole(ALL).source
    origin = found.origin
    assert origin
    assert {origin.taken[spot].address for spot in origin.taken} == {"brindleway/otter-2014-2018"}
    column = ALL.splitlines()[1].index("parts: ") + len("parts: ") + 1
    for pointer in (("parts", "radio"), ("parts", "radio", "held_by", 0, "screw"), ("parts", "radio", "after", 1)):
        assert (found.position(pointer).line, found.position(pointer).column) == (7, column)
        assert origin.is_taken(pointer)
    assert not origin.is_taken(("vehicle", "make"))


# What lies over it


def test_own_fields_lie_over_it_one_by_one(place: Place) -> None:
    found = place.record(ALL + "parts:\n  vent: {takes: 9 min, source: e1}\n")
    vent = found.parts["vent"]
    assert (vent.name, vent.source, vent.held_by[0].count) == ("Upper vent", ("e1",), 4)
    assert str(vent.takes) != str(place.record(ALL).parts["vent"].takes)
    assert ("parts", "vent", "takes") not in found.taken
    assert found.taken["parts", "vent", "held_by"].own == (("parts", "takes"),)


def test_pins_and_tethers_are_overlaid_by_id_and_none_takes_back(place: Place) -> None:
    found = place.record(
        ALL
        + "parts:\n  radio: {tethers: {map-lead: none}}\nconnectors:\n  main: {pins: {3: {colour: pink}, 4: [blue, mute]}}\n"
    )
    assert list(found.parts["radio"].tethers) == ["main"]
    pins = found.connectors["main"].pins
    assert {pin.id: (pin.colour, pin.function) for pin in pins.values()} == {
        "1": ("yellow", "battery-feed"),
        "2": ("black", "ground"),
        "3": ("pink", "switched-feed"),
        "4": ("blue", "mute"),
    }
    taken = [spot[3:] for spot in found.taken if spot[:3] == ("connectors", "main", "pins")]
    assert sorted(taken) == [("1",), ("2",), ("3", "function")]
    assert found.parts["seat"].takes is not None
    assert place.record(ALL + "parts:\n  seat: {takes: none}\n").parts["seat"].takes is None


def test_none_that_is_a_value_of_the_field_takes_nothing_back(place: Place) -> None:
    place.write(
        "brindleway/otter-2014-2018",
        OTTER.replace("    room_to_grille", "    factory_spacer: 12 mm\n    room_to_grille"),
    )
    found = place.record(ALL + "openings:\n  front-door: {factory_spacer: none, source: e1}\n")
    assert getattr(found.openings["front-door"], "factory_spacer") is Blank.NONE  # noqa: B009


def test_what_the_car_does_not_have_is_left_out_of_links_too(place: Place) -> None:
    text = ALL.replace("connectors: all", "connectors: all, without: brace")
    found = place.record(text + "parts:\n  radio: {tethers: {map-lead: none}}\n")
    assert [ref.part for ref in found.parts["radio"].after] == ["vent"]
    assert "brace" not in found.parts


def test_an_opening_of_its_own_follows_a_part_that_is_taken(place: Place) -> None:
    own = "openings:\n  low: {name: Low, kind: speaker, behind: panel, hole: {shape: round, diameter: 100 mm}, depth: {clear: 50 mm}}\n"
    found = place.record("shares:\n  otter-2014-2018: {parts: front-door}\n" + own)
    assert (found.openings["low"].area, found.openings["low"].each) == ("front-door", ("left", "right"))


def test_the_other_record_stays_as_it_is(place: Place) -> None:
    path = place.folder / "records/vehicles/brindleway/otter-2014-2018.yaml"
    alone = Workspace(place.folder).load(path)
    place.vole(ALL + "parts:\n  radio: {tethers: {map-lead: none}}\n")
    again = Workspace(place.folder).load(path)
    assert alone.source.data == again.source.data
    assert alone.record == again.record
    assert isinstance(again.record, VehicleRecord)
    assert again.record.taken == {}


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
    vehicles, path = place.folder / "records" / "vehicles", place.vole(ALL).path
    before = sisters_digest(vehicles, path, Digests())
    place.write("brindleway/heron-2014-2018", OTTER.replace("Otter", "Heron"))
    assert sisters_digest(vehicles, path, Digests()) == before  # it takes nothing from that one
    place.write("brindleway/otter-2014-2018", OTTER.replace("182 mm", "181 mm"))
    assert sisters_digest(vehicles, path, Digests()) != before
    assert sisters_digest(vehicles, vehicles / "brindleway/otter-2014-2018.yaml", Digests()) == ""


def test_a_record_that_comes_to_be_there_counts_too(place: Place) -> None:
    vehicles, path = place.folder / "records" / "vehicles", place.vole(ALL.replace("otter", "heron")).path
    before = sisters_digest(vehicles, path, Digests())
    place.write("brindleway/heron-2014-2018", OTTER.replace("Otter", "Heron"))
    assert sisters_digest(vehicles, path, Digests()) != before
