"""The script beside the openings gives Python's verdicts, numbers and words: in Node, without a browser."""

import json
import shutil
import subprocess
from typing import Any

import pytest

from undertrim.publish.facts.fit_page import length_units
from undertrim.resources import top
from vectors.fit import FIXED, differences, said
from vectors.fit_load import asked_load, loads, said_load
from vectors.fit_random import randoms

NODE = shutil.which("node")
ASSETS = top("site_overrides") / "assets" / "undertrim"
PROGRAM = """
const folder = process.argv[1];
const lengths = require(folder + "/lengths.js"), fit = require(folder + "/fit.js");
const asked = JSON.parse(require("fs").readFileSync(0, "utf8"));
lengths.use(asked.units);
console.log(JSON.stringify({
  fits: asked.fits.map((one) => fit[one.kind](one.gear, one.opening, one.between, one.usual)),
  loads: asked.loads.map((one) => fit.load({ impedance: one.parts[0].impedance }, one)),
}));
"""


@pytest.mark.skipif(NODE is None, reason="there is no Node")
def test_the_script_answers_as_the_program_does() -> None:
    cases, joined = [*FIXED, *randoms(11, 300)], loads(11, 300)
    asked = {
        "units": length_units(),
        "fits": [case.asked() for case in cases],
        "loads": [asked_load(*one) for one in joined],
    }
    answers = run(asked)
    for case, answer in zip(cases, answers["fits"], strict=True):
        assert list(differences(said(case.answer()), answer)) == [], case
    for one, answer in zip(joined, answers["loads"], strict=True):
        ours = said_load(*one)
        assert list(differences(ours, {key: answer[key] for key in ours})) == [], one
    assert {answer["verdict"] for answer in answers["loads"]} == {"fits", "marginal", "fails", "unknown"}


def run(asked: dict[str, Any]) -> dict[str, Any]:
    done = subprocess.run(
        [str(NODE), "-e", PROGRAM, str(ASSETS)],
        input=json.dumps(asked),
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    found: dict[str, Any] = json.loads(done.stdout)
    return found
