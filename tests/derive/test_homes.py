"""What goes back, what moves over to new parts and what stays out, by what the visit fits."""

from making import ids, plan, record, step
from undertrim.derive.procedure import tally
from undertrim.words import say


def test_a_part_that_moves_over_goes_to_its_opening_and_is_not_refitted() -> None:
    about = record("""
        parts:
          radio: {replaced: yes}
          climate: {goes_to: dash, after: [radio], held_by: [{screw: T20, count: 4}]}
        openings:
          dash: {behind: [radio]}
    """)
    names = ids(about, "dash")
    assert names.index("move:climate") < names.index("install:dash:compare")
    assert "refit:climate" not in names


def test_a_part_that_would_move_over_is_refitted_when_its_opening_is_no_part_of_the_visit() -> None:
    about = record("""
        parts:
          climate: {goes_to: dash}
          radio: {replaced: yes, after: [climate]}
          centre-speaker: {replaced: yes, after: [climate]}
        openings:
          dash: {behind: [radio]}
          centre: {behind: [centre-speaker]}
    """)
    assert "refit:climate" in ids(about, "centre")
    assert "move:climate" not in ids(about, "centre")
    both = ids(about, "centre", "dash")
    assert "move:climate" in both
    assert "refit:climate" not in both


def test_a_part_that_moves_over_is_sealed_and_its_cables_are_tested() -> None:
    about = record("""
        parts:
          radio: {replaced: yes}
          climate: {goes_to: dash, seal: foam strip, tethers: {flap: {name: Flap cable, kind: cable}, main: {name: Plug, kind: plug}}}
        openings:
          dash: {behind: [radio]}
    """)
    made = plan(about, "dash")
    names = [item.id for item in made.steps]
    assert names[names.index("move:climate") + 1] == "test:climate:moved:flap"
    assert "Seal it again: foam strip." in [say(part) for part in step(made, "move:climate").text]


BEHIND_THE_RADIO = """
    parts:
      radio:
        replaced: yes
        held_by: [{screw: T20, count: 4, moves: yes}, {clip: metal, count: 2}]
        tethers: {main: {name: Main plug, kind: plug}, flap: {name: Flap cable, kind: cable}, lamp: {name: Lamp, kind: plug, then: park}}
      centre: {replaced: yes, after: [radio]}
    openings:
      dash: {behind: [radio]}
      middle: {behind: [centre]}
"""


def test_a_factory_part_goes_back_when_its_gear_is_no_part_of_the_visit() -> None:
    about = record(BEHIND_THE_RADIO)
    made = plan(about, "middle")
    back = step(made, "refit:radio")
    assert [(line.tether.id, line.act) for line in back.tethers] == [
        ("main", "joined"), ("flap", "rejoin"), ("lamp", "joined"),
    ]  # fmt: skip
    assert [(say(item.what), item.out, item.back, item.moved, item.bagged) for item in tally.fasteners(made.steps)] == [
        ("T20", 4, 4, 0, 0),
        ("metal", 2, 2, 0, 0),
    ]
    assert "test:radio:flap" in [item.id for item in made.steps]
    assert "refit:centre" not in [item.id for item in made.steps]


def test_a_factory_part_stays_out_when_its_gear_is() -> None:
    about = record(BEHIND_THE_RADIO)
    assert "refit:radio" not in ids(about, "dash")
    assert "refit:radio" not in ids(about, "dash", "middle")


def test_a_factory_part_that_no_opening_names_stays_out_of_every_visit_that_needs_it_off() -> None:
    about = record("""
        parts:
          surround: {replaced: yes}
          radio: {replaced: yes, after: [surround]}
        openings:
          dash: {behind: [radio]}
    """)
    assert "refit:surround" not in ids(about, "dash")


def test_parts_of_a_side_move_over_at_their_side_and_once() -> None:
    about = record("""
        parts:
          grille: {each: [left, right], goes_to: door}
          switch: {goes_to: door}
          speaker: {each: [left, right], replaced: yes}
        openings:
          door: {each: [left, right], behind: [speaker]}
    """)
    names = ids(about, "door")
    moves = [name for name in names if name.startswith("move:")]
    assert sorted(moves) == ["move:grille@left", "move:grille@right", "move:switch"]
    assert names.index("install:door@left:offer") < names.index("move:grille@right")


def test_fasteners_of_a_preparation_go_back_as_they_were_found() -> None:
    about = record("""
        variants:
          lid: {ask: Which one, choices: {one: {label: One}, two: {label: Two}}}
        preps:
          battery:
            sets: {battery: off}
            held_by:
              - {nut: hex 10 mm, count: 1}
              - {nut: hex 13 mm, count: 2, when: {lid: two}}
              - {screw: T20, count: 3, leave: yes}
        parts:
          trim:
        openings:
          dash: {behind: [trim]}
    """)
    back = step(plan(about, "dash", lid="one"), "restore:battery")
    assert [(line.fastener.what, line.fate) for line in back.fasteners] == [("hex 10 mm", "back")]
