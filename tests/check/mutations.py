"""Named ways to spoil a record, each with every place where it can be done.

A mutation is a function from a record's data to (place, spoilt data) pairs; what it yields is valid by the schema.
"""

# Long because it is one table: each way to spoil a record stands with the rule that must find it.

from collections import Counter
from collections.abc import Callable, Iterator
from typing import Any

from undertrim.record.copying import copied

Data = dict[str, Any]
Spoilt = Iterator[tuple[str, Data]]
Mutation = Callable[[Data], Spoilt]

KINDS: dict[str, tuple[Mutation, str]] = {}
"""By name: the mutation, and the rule that catches it."""

DOORS = ("front-door", "rear-door")
TURNED = ("screw", "bolt", "nut")


def caught_by(rule: str) -> Callable[[Mutation], Mutation]:
    """Registers a mutation with the rule that must find it."""

    def register(mutation: Mutation) -> Mutation:
        KINDS[mutation.__name__] = mutation, rule
        return mutation

    return register


def _copies(data: Data, *keys: str | int) -> tuple[Data, Any]:
    """A copy of a record, and the thing at these keys inside the copy."""
    whole: Any = copied(data)
    inner = whole
    for key in keys:
        inner = inner[key]
    return whole, inner


def _things(data: Data, *sections: str) -> Iterator[tuple[str, str, Data]]:
    for section in sections or ("preps", "parts", "openings"):
        for name, thing in data.get(section, {}).items():
            yield section, name, thing


def _tethers(data: Data) -> Iterator[tuple[str, str, Data, Data]]:
    for _, name, part in _things(data, "parts"):
        for tether, facts in part.get("tethers", {}).items():
            yield name, tether, facts, part


def _fasteners(data: Data) -> Iterator[tuple[tuple[str, str, str, int], Data]]:
    for section, name, thing in _things(data, "preps", "parts"):
        for index, fastener in enumerate(thing.get("held_by", ())):
            yield (section, name, "held_by", index), fastener


def _ref(item: Any) -> str:
    return str(item["part"] if isinstance(item, dict) else item)


def _references(data: Data) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """Every place that names a part or preparation as coming first, and every part that moves to an opening."""
    for section, name, thing in _things(data):
        for key in ("after", "behind"):
            for index, item in enumerate(thing.get(key, ())):
                yield (section, name, key, index), _ref(item)
        for number, choice in enumerate(thing.get("after_any", ())):
            for route, refs in choice.items():
                for index, item in enumerate(refs):
                    yield (section, name, "after_any", number, route, index), _ref(item)
        if "goes_to" in thing:
            yield (section, name, "goes_to"), name
    for place, fastener in _fasteners(data):
        if "under" in fastener:
            yield (*place, "under"), fastener["under"]


def _needed(data: Data) -> Counter[tuple[str, str]]:
    things = (thing for _, _, thing in _things(data, "preps", "parts"))
    return Counter(pair for thing in things for pair in thing.get("needs", {}).items())


def _set(data: Data, place: tuple[str | int, ...], value: Any) -> Data:
    whole, inner = _copies(data, *place[:-1])
    inner[place[-1]] = value
    return whole


def _drop(data: Data, place: tuple[str | int, ...]) -> Data:
    """Without one entry, and without what held it if nothing else is in it."""
    whole, inner = _copies(data, *place[:-1])
    del inner[place[-1]]
    return whole if inner or len(place) < 3 else _drop(whole, place[:-1])


# What comes first


@caught_by("unused-part")
def drop_the_only_mention_of_a_part(data: Data) -> Spoilt:
    mentions = Counter(name for _, name in _references(data))
    for place, name in _references(data):
        if mentions[name] == 1 and name in data["parts"] and place[2] in ("after", "held_by"):
            yield f"{place}", _drop(data, place)


@caught_by("named-but-absent")
def rename_a_part_where_it_is_given(data: Data) -> Spoilt:
    used = dict.fromkeys(name for place, name in _references(data) if place[-1] != "goes_to" and name in data["parts"])
    for name in used:
        parts = {f"{key}-x" if key == name else key: part for key, part in data["parts"].items()}
        yield name, {**data, "parts": parts}


@caught_by("named-but-absent")
def rename_a_part_where_it_is_used(data: Data) -> Spoilt:
    for place, name in _references(data):
        if place[-1] != "goes_to":
            yield f"{place}", _set(data, place, f"{name}-x")


@caught_by("named-but-absent")
def rename_evidence_where_it_is_given(data: Data) -> Spoilt:
    text = str({key: value for key, value in data.items() if key != "evidence"})
    for name in data["evidence"]:
        if f"'source': '{name}'" in text:
            evidence = {f"{key}x" if key == name else key: item for key, item in data["evidence"].items()}
            yield name, {**data, "evidence": evidence}


@caught_by("undeclared-variant")
def rename_a_choice_where_it_is_given(data: Data) -> Spoilt:
    text = str({key: value for key, value in data.items() if key not in ("variants", "evidence")})
    for _, name, variant in _things(data, "variants"):
        for choice in variant["choices"]:
            if f"'{name}': '{choice}'" in text:
                choices = {f"{key}-x" if key == choice else key: item for key, item in variant["choices"].items()}
                yield f"{name}={choice}", _set(data, ("variants", name, "choices"), choices)


@caught_by("order-cycle")
def wait_for_what_waits_for_it(data: Data) -> Spoilt:
    for place, needed in _references(data):
        user = str(place[1])
        known = place[0] == "parts" and place[2] in ("after", "held_by") and needed in data["parts"]
        if known and not data["parts"][user].get("when") and not _conditional(data, place):
            after = data["parts"][needed].get("after", [])
            yield f"{needed} after {user}", _set(data, ("parts", needed, "after"), [*after, user])


def _conditional(data: Data, place: tuple[str | int, ...]) -> bool:
    _, item = _copies(data, *place[:4])
    return isinstance(item, dict) and ("when" in item or item.get("leave") == "yes")


# States of the car


@caught_by("unused-prep")
def drop_the_only_need_of_a_preparation(data: Data) -> Spoilt:
    needed = _needed(data)
    for _, name, prep in _things(data, "preps"):
        for pair in prep["sets"].items():
            if needed[pair] == 1 and pair[0] != "battery" and name not in {ref for _, ref in _references(data)}:
                for section, user, thing in _things(data, "preps", "parts"):
                    if thing.get("needs", {}).get(pair[0]) == pair[1]:
                        yield f"{user} {pair}", _drop(data, (section, user, "needs", pair[0]))


OTHER = {
    "on": "off", "off": "on", "lowest": "park", "neutral": "park", "up": "down", "forward": "rearward", "open": "closed", "lowered": "home",
}  # fmt: skip


@caught_by("unused-prep")
def flip_what_a_preparation_sets(data: Data) -> Spoilt:
    needed = _needed(data)
    for _, name, prep in _things(data, "preps"):
        for state, value in prep["sets"].items():
            if (
                state != "battery"
                and not needed[state, OTHER[value]]
                and name not in {ref for _, ref in _references(data)}
            ):
                yield f"{name} {state}", _set(data, ("preps", name, "sets", state), OTHER[value])


@caught_by("unused-prep")
def flip_the_only_need_of_a_preparation(data: Data) -> Spoilt:
    for place, _ in drop_the_only_need_of_a_preparation(data):
        user, pair = place.split(" ", 1)
        state, value = pair.strip("()").replace("'", "").split(", ")
        section = "preps" if user in data.get("preps", {}) else "parts"
        yield place, _set(data, (section, user, "needs", state), OTHER[value])


@caught_by("unsafe-procedure")
def take_the_battery_off_with_the_ignition_on(data: Data) -> Spoilt:
    for _, name, prep in _things(data, "preps"):
        if prep["sets"].get("battery") == "off":
            whole = _drop(data, ("preps", name, "needs", "ignition"))
            for _, part, facts in _things(whole, "parts"):
                if (
                    "each" in facts
                    and not {"after", "after_any", "needs", "tethers", "when"} & facts.keys()
                    and not _covered(facts)
                ):
                    yield f"{name} {part}", _set(whole, ("parts", part, "needs"), {"ignition": "on"})


def _covered(part: Data) -> bool:
    return any("under" in fastener for fastener in part.get("held_by", ()))


@caught_by("unsafe-procedure")
def forget_to_open_the_boot_over_the_battery(data: Data) -> Spoilt:
    for _, name, prep in _things(data, "preps"):
        closure = data.get("closures", {}).get("boot", {})
        if prep["sets"].get("battery") == "off" and prep.get("area") == "boot" and closure.get("latch") == "electric":
            whole = data
            for section, user, thing in _things(data, "preps", "parts"):
                if thing.get("needs", {}).get("boot") == "open":
                    whole = _drop(whole, (section, user, "needs", "boot"))
            yield name, whole


@caught_by("unsafe-procedure")
def forget_to_join_the_battery_again(data: Data) -> Spoilt:
    for _, name, prep in _things(data, "preps"):
        if prep["sets"].get("battery") == "off":
            bare = {key: value for key, value in prep.items() if key not in ("restore", "held_by")}
            yield name, _set(data, ("preps", name), bare)


@caught_by("state-collision")
def need_the_battery_after_it_is_off(data: Data) -> Spoilt:
    wired = {name for name, _, tether, _ in _tethers(data) if tether["kind"] == "plug" and not _idle(tether)}
    for _, name, part in _things(data, "parts"):
        firm = {ref for ref in part.get("after", ()) if isinstance(ref, str)}
        if firm & wired and not part.get("when") and not any(data["parts"][ref].get("when") for ref in firm):
            yield name, _set(data, ("parts", name, "needs"), {**part.get("needs", {}), "battery": "on"})


def _idle(tether: Data) -> bool:
    return tether.get("then") == "leave" or "when" in tether


# Tethers


@caught_by("restraint-undecided")
def leave_a_restraint_plug_undecided(data: Data) -> Spoilt:
    for part, name, tether, _ in _tethers(data):
        if tether.get("circuit") == "restraint":
            yield f"{part}/{name}", _drop(data, ("parts", part, "tethers", name, "then"))


@caught_by("tether-left-open")
def park_a_restraint_plug(data: Data) -> Spoilt:
    for part, name, tether, _ in _tethers(data):
        if tether.get("circuit") == "restraint":
            yield f"{part}/{name}", _set(data, ("parts", part, "tethers", name, "then"), "park")


@caught_by("tether-left-open")
def park_a_cable_of_a_part_that_goes_back(data: Data) -> Spoilt:
    for part, name, tether, facts in _tethers(data):
        if tether["kind"] in ("cable", "rod") and facts.get("replaced") != "yes":
            yield f"{part}/{name}", _set(data, ("parts", part, "tethers", name, "then"), "park")


@caught_by("tether-left-open")
def join_a_plug_to_gear_that_is_not_there(data: Data) -> Spoilt:
    for part, name, tether, facts in _tethers(data):
        if facts.get("replaced") != "yes" and tether.get("circuit") != "restraint":
            yield f"{part}/{name}", _set(data, ("parts", part, "tethers", name, "then"), "to-gear")


@caught_by("tether-left-open")
def leave_a_plug_on_what_is_replaced(data: Data) -> Spoilt:
    for part, name, _, facts in _tethers(data):
        if facts.get("replaced") == "yes":
            yield f"{part}/{name}", _set(data, ("parts", part, "tethers", name, "then"), "leave")


@caught_by("ring-left-open")
def make_it_a_ring(data: Data) -> Spoilt:
    for part, name, tether, facts in _tethers(data):
        if facts.get("replaced") == "yes" and tether["kind"] == "plug":
            yield f"{part}/{name}", _set(data, ("parts", part, "tethers", name, "kind"), "fibre")


# Fasteners


@caught_by("edges-do-not-add-up")
def miscount_beside_the_edges(data: Data) -> Spoilt:
    for place, fastener in _fasteners(data):
        if "at" in fastener and "count" in fastener:
            yield f"{place}", _set(data, (*place, "count"), str(int(fastener["count"]) + 1))


@caught_by("edges-do-not-add-up")
def miscount_an_edge(data: Data) -> Spoilt:
    for place, fastener in _fasteners(data):
        for edge, number in fastener.get("at", {}).items():
            if "count" in fastener:
                yield f"{place}", _set(data, (*place, "at", edge), str(int(number) + 1))


@caught_by("fastener-without-count")
def forget_a_count(data: Data) -> Spoilt:
    for place, fastener in _fasteners(data):
        if "count" in fastener and not {"bond", "hook"} & fastener.keys():
            plain = {key: value for key, value in fastener.items() if key not in ("count", "at")}
            yield f"{place}", _set(data, place, plain)


@caught_by("hook-pulled")
def pull_it_off_its_hooks(data: Data) -> Spoilt:
    for _, name, part in _things(data, "parts"):
        if any("hook" in fastener for fastener in part.get("held_by", ())):
            yield name, _set(data, ("parts", name, "release"), "pull")


@caught_by("look-alike-without-mark")
def take_the_mark_off_a_look_alike(data: Data) -> Spoilt:
    for place, fastener in _fasteners(data):
        _, siblings = _copies(data, *place[:3])
        drive = {kind: fastener[kind] for kind in TURNED if kind in fastener}
        others = [other for other in siblings if other.get("leave") != "yes" and drive.items() <= other.items()]
        if fastener.get("leave") == "yes" and "note" in fastener and drive and others:
            yield f"{place}", _drop(data, (*place, "note"))


@caught_by("seat-torque")
def hold_a_seat_with_any_bolt(data: Data) -> Spoilt:
    for place, fastener in _fasteners(data):
        if set(TURNED) & fastener.keys() and "torque" not in fastener and fastener.get("leave") != "yes":
            yield f"{place}", _set(data, (*place, "role"), "seat")


@caught_by("torque-above-thread")
def read_pound_inches_as_newton_metres(data: Data) -> Spoilt:
    for place, fastener in _fasteners(data):
        if fastener.get("thread", "").startswith("M") and fastener.get("role", "ordinary") == "ordinary":
            yield f"{place}", _set(data, (*place, "torque"), "88 N.m")


@caught_by("peel-without-seal")
def forget_the_seal(data: Data) -> Spoilt:
    for _, name, part in _things(data, "parts"):
        if "seal" in part:
            yield name, _drop(data, ("parts", name, "seal"))


# Hazards


@caught_by("signal-word")
def lower_a_signal_word(data: Data) -> Spoilt:
    for section, name, thing in _things(data):
        for index, caution in enumerate(thing.get("cautions", ())):
            if caution["signal"] in ("WARNING", "DANGER", "CAUTION"):
                yield f"{name}", _set(data, (section, name, "cautions", index, "signal"), "NOTICE")


@caught_by("signal-word-overstated")
def raise_a_signal_word(data: Data) -> Spoilt:
    for section, name, thing in _things(data):
        for index, caution in enumerate(thing.get("cautions", ())):
            if caution["signal"] == "NOTICE":
                broken = {**caution, "signal": "WARNING", "consequence": "It breaks."}
                yield f"{name}", _set(data, (section, name, "cautions", index), broken)


@caught_by("cutting-near-sensor")
def drill_where_a_sensor_may_be(data: Data) -> Spoilt:
    for _, name, opening in _things(data, "openings"):
        if opening["kind"] == "speaker" and opening.get("area", name) in DOORS:
            for answer in ("yes", "unknown"):
                altered = {**opening, "crash_sensor": answer, "alters": ["drill"]}
                yield f"{name} {answer}", _set(data, ("openings", name), altered)


@caught_by("cutting-near-sensor")
def tell_to_drill_where_a_sensor_is(data: Data) -> Spoilt:
    whole = copied(data)
    for _, _, opening in _things(whole, "openings"):
        if opening["kind"] == "speaker":
            opening["crash_sensor"] = "yes"
    for _, name, part in _things(whole, "parts"):
        if part.get("area") in DOORS:
            yield name, _set(whole, ("parts", name, "how"), f"{part['how']} Drill two holes.")


@caught_by("voltage-inside")
def go_inside_the_high_voltage(data: Data) -> Spoilt:
    whole = _set(data, ("vehicle", "high_voltage"), "yes")
    for _, name, _ in _things(data, "parts"):
        yield name, _set(whole, ("parts", name, "high_voltage"), "inside")


@caught_by("defeats-safety")
def tell_to_bypass(data: Data) -> Spoilt:
    for section, name, thing in _things(data):
        for key in ("how", "refit_how", "restore", "install_how", "test_how"):
            if key in thing:
                yield f"{name} {key}", _set(data, (section, name, key), f"{thing[key]} Bypass the parking brake.")
    for _, name, duty in _things(data, "duties", "functions"):
        if "note" in duty:
            yield (
                name,
                {**data, "duties": {"radio": {"kept_by": "none", "note": f"{duty['note']} Bypass the parking brake."}}},
            )


# Waits and lists


@caught_by("wait-shorter-than-maker")
def wait_less_than_the_maker(data: Data) -> Spoilt:
    for _, name, prep in _things(data, "preps"):
        if prep["sets"].get("battery") == "off" and data["restraint"]["wait"] not in ("unknown", "none"):
            yield name, _set(data, ("preps", name, "wait"), {"time": "60 s", "why": "Reserve power"})


@caught_by("wait-shorter-than-maker")
def say_no_wait(data: Data) -> Spoilt:
    if data.get("restraint", {}).get("fitted") != "no":
        yield "none", {**data, "restraint": {**data["restraint"], "wait": "none"}}


@caught_by("wait-shorter-than-maker")
def forget_the_wait(data: Data) -> Spoilt:
    if any(tether.get("circuit") == "restraint" for _, _, tether, _ in _tethers(data)):
        yield "block", {key: value for key, value in data.items() if key != "restraint"}


@caught_by("battery-lists")
def forget_a_list(data: Data) -> Spoilt:
    for name in ("before", "after"):
        known = {key: value for key, value in data["after_battery"].items() if key not in (name, "checked_none")}
        yield name, {**data, "after_battery": known}
    yield "both", {key: value for key, value in data.items() if key != "after_battery"}


@caught_by("memory-keeper")
def keep_the_memories_against_the_maker(data: Data) -> Spoilt:
    if data.get("restraint", {}).get("memory_keeper") == "forbidden":
        before = {**data["after_battery"]["before"], "keeper": {"do": "Plug in a memory keeper."}}
        yield "before", {**data, "after_battery": {**data["after_battery"], "before": before}}


# Which cars, what size


@caught_by("year-range")
def reverse_the_years(data: Data) -> Spoilt:
    built = data["vehicle"]["built"]
    yield "built", _set(data, ("vehicle", "built"), {"from": built["to"], "to": built["from"]})


@caught_by("depth-without-datum")
def forget_a_datum(data: Data) -> Spoilt:
    for _, name, opening in _things(data, "openings"):
        if opening["kind"] == "speaker":
            yield name, _drop(data, ("openings", name, "depth", "datum"))


@caught_by("pin-outside-plug")
def shrink_a_plug(data: Data) -> Spoilt:
    for _, name, plug in _things(data, "connectors"):
        if any(pin.isdecimal() and int(pin) > int(plug["rows"]) for pin in plug["pins"]):
            yield name, _set(data, ("connectors", name, "columns"), "1")
