"""Ids follow from names, and the file's path from the id."""

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record.gear import GEAR
from undertrim.record.identity import gear_path, slug, vehicle_path
from undertrim.record.model import Built, Month, VehicleFacts


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        ("Finch", "finch"),
        ("Finch Five", "finch-five"),
        ("Finch-Five", "finch-five"),
        ("  A.B.  C! ", "a-b-c"),
        ("Élan Größe", "elan-grosse"),
        ("Søren Łódź Đà Æon Œuvre", "soren-lodz-da-aeon-oeuvre"),
        ("ﬁnch", "finch"),
        ("Ⅳ", "iv"),
        ("ÇİĞ", "cig"),
        ("Жук", "жук"),
        ("鹰 2", "鹰-2"),
        ("a_b", "a-b"),
        ("½", "1-2"),
        ("S65/2", "s65-2"),
        ("../../x", "x"),
        ("", ""),
        ("!!!", ""),
        ("Ǽgir", "aegir"),
        ("\u0301", ""),
        ("a\x1b[31mb", "a-31mb"),
    ],
)
def test_slug(name: str, wanted: str) -> None:
    assert slug(name) == wanted


@given(st.text())
def test_a_slug_is_stable_and_safe_in_a_path(name: str) -> None:
    made = slug(name)
    assert slug(made) == made
    assert not set(made) & set(string.whitespace + string.punctuation.replace("-", "") + string.ascii_uppercase)
    assert not made.startswith("-")
    assert not made.endswith("-")
    assert "--" not in made


def facts(make: str, model: str, phase: str = "") -> VehicleFacts:
    return VehicleFacts(make, model, Built(Month(2014, 3), Month(2018, 9)), ("left",), "no", phase)


def test_vehicle_path() -> None:
    assert str(vehicle_path(facts("Kelbrook", "Finch"))) == "kelbrook/finch-2014-2018.yaml"
    assert str(vehicle_path(facts("Kel Brook", "Finch Ö", "facelift"))) == ("kel-brook/finch-o-2014-2018-facelift.yaml")
    assert str(vehicle_path(facts("../up", "/etc/x"))) == "up/etc-x-2014-2018.yaml"


@pytest.mark.parametrize(
    ("kind", "folder"),
    [("receiver", "receivers"), ("harness", "harnesses"), ("kit", "kits"), ("leads", "leads")],
)
def test_gear_path(kind: str, folder: str) -> None:
    assert str(gear_path(GEAR[kind]("Sand Martin", "S-65"))) == f"{folder}/sand-martin-s-65.yaml"
