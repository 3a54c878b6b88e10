"""The printed sheet: what stands on every page, that a record stays text, and that PDF/UA-1 holds."""

# Long because one printed sheet is asked everything that holds of paper.

import copy
import io
import re
import threading
from datetime import date
from itertools import product
from typing import Any

import pytest
import segno
from pypdf import PdfReader

from pdf_text import texts
from undertrim.publish.facts.vehicle import vehicle
from undertrim.publish.pictures.drawings import clips, heads
from undertrim.publish.printed import pdf
from undertrim.publish.printed.sheet import Paper, combined, glyphs, pictures, view
from undertrim.publish.printed.sheet.steps import sections
from undertrim.record.store import Workspace
from undertrim.resources import top
from undertrim.words import say

Facts = dict[str, Any]

URL = "https://undertrim.invalid/wexcombe/plover-2017-2022.html"
MADE = date(2026, 5, 4)
HOSTILE = [
    '#import "@preview/x:1.0.0": *', "$x$", "*b* _i_", "\\u{41} \\#", "<label>", "@ref",
    '#read("/etc/passwd")', "`raw`", "= H", "]]})", "#sys.inputs", "// c /* d */",
]  # fmt: skip


@pytest.fixture(scope="module")
def facts() -> Facts:
    space = Workspace(top("records").parent)
    return dict(vehicle(space.load(top("records") / "vehicles/wexcombe/plover-2017-2022.yaml")))


@pytest.fixture(scope="module")
def printed(facts: Facts) -> bytes:
    return pdf.render(facts, {"fitting": URL}, "a4", MADE)


@pytest.fixture(scope="module")
def text(printed: bytes) -> list[str]:
    return pages(printed)


def pages(data: bytes) -> list[str]:
    """The text of every page with single spaces and without the places where long words may break."""
    return [re.sub(r"\s+", " ", text) for text in texts(data)]


def bare(text: str) -> str:
    return re.sub(r"[\s\u200b]", "", text)


# ISO 216 A4 and ANSI/ASME Y14.1 size A, in points of 1/72 in.
@pytest.mark.parametrize(("paper", "size"), [("a4", (595.3, 841.9)), ("us-letter", (612, 792))])
def test_paper_size(facts: Facts, paper: Paper, size: tuple[float, float]) -> None:
    for page in PdfReader(io.BytesIO(pdf.render(facts, {"fitting": URL}, paper, MADE))).pages:
        assert (page.mediabox.width, page.mediabox.height) == pytest.approx(size, abs=0.1)


def test_every_sheet_says_what_it_belongs_to(facts: Facts, text: list[str]) -> None:
    for number, page in enumerate(text, start=1):
        assert f"{facts['title']} {facts['years']}" in page
        assert f"Data date {facts['data_date']}" in page
        assert "Sheet made 2026-05-04" in page
        assert f"page {number} of {len(text)}" in page
        assert facts["address"] in page
        assert "invented vehicle" in page
        assert "DANGER High-voltage vehicle." in page
        assert "The maker's information, local codes and licensed practice come first." in page


def test_high_voltage_line_follows_the_record(facts: Facts) -> None:
    short = {**facts, "steps": [], "plans": []}
    none = pages(pdf.render({**short, "high_voltage": "no", "demo": False}, {"fitting": URL}, "a4", MADE))
    unknown = pages(pdf.render({**short, "high_voltage": "unknown"}, {"fitting": URL}, "a4", MADE))
    assert len(unknown) > 1
    assert not any("DANGER High-voltage" in page or "invented vehicle" in page for page in none)
    assert all("WARNING Whether this vehicle has a high-voltage system is not" in page for page in unknown)


def test_every_step_is_printed_with_its_number_in_order(facts: Facts, text: list[str]) -> None:
    whole = bare("".join(text))
    at = 0
    for number, step in enumerate(facts["steps"], start=1):
        at = whole.index(bare(f"{number}{step['verb']}{step['title']}"), at)
        for line in (*step["text"], *(tether["name"] for tether in step["tethers"])):
            assert bare(line) in whole


def test_all_that_is_known_of_a_look_at_a_car_is_printed(facts: Facts, text: list[str]) -> None:
    whole = bare(" ".join(text))
    told = [words for item in facts["evidence"] for words in (item["car"], item["with"], item["note"]) if words]
    assert len(told) > 10
    missing = [words for words in told if bare(words) not in whole]
    assert len(missing) <= 1, missing  # the end of a page may cut one
    # What rests on a look stands on the page; here each step and opening names its looks.
    named = {name for item in (*facts["steps"], *facts["openings"]) for name in item["source"]}
    assert named <= {item["id"] for item in facts["evidence"]}
    assert all(bare(", ".join(step["source"])) in whole for step in facts["steps"])


def test_it_is_short(text: list[str], facts: Facts) -> None:
    assert len(facts["steps"]) > 140
    assert len(text) <= 7


def test_what_is_lost_is_signed_for(facts: Facts, text: list[str]) -> None:
    kept = [entry for entry in facts["blockers"] if entry["weight"] != "lost"]
    made = pdf.render({**facts, "steps": [], "plans": [], "blockers": kept}, {"fitting": URL}, "a4", MADE)
    assert "I have been told what is lost. Signature" in text[0]
    assert "I have been told" not in "".join(pages(made))


def test_a_record_is_text_and_never_code(facts: Facts) -> None:
    hostile = copy.deepcopy(facts)
    hostile["steps"] = hostile["steps"][:8]
    for step, words in zip(hostile["steps"], HOSTILE, strict=False):
        step["title"], step["text"], step["when"] = words, HOSTILE, words
        step["cautions"] = [{"signal": "WARNING", "hazard": words, "consequence": words, "avoid": words, "when": ""}]
    hostile["openings"][0]["rows"][0] = {"label": HOSTILE[0], "value": HOSTILE[6]}
    hostile |= {"title": HOSTILE[6], "tell": HOSTILE[1], "address": HOSTILE[3], "plans": []}
    found = pages(pdf.render(hostile, {"fitting": URL}, "a4", MADE))
    whole = bare("".join(found))
    for words in HOSTILE:
        assert whole.count(bare(words)) >= 8
    assert HOSTILE[6] in found[0]
    assert "root:" not in whole


def test_nothing_that_a_font_lacks_stops_the_print(facts: Facts) -> None:
    title = "日本 \U0001f600 a\u202eb\x07 \ud7ff Ω é"
    found = pages(pdf.render({**facts, "steps": [], "tell": title}, {"fitting": URL}, "a4", MADE))
    assert "[U+65E5][U+672C] [U+1F600] ab [U+D7FF] Ω é" in found[0].replace("  ", " ")


def test_a_long_word_stays_on_the_sheet(facts: Facts) -> None:
    word = "Windscreenpillartrim" * 20
    step = {**facts["steps"][0], "title": word, "text": [word]}
    made = pdf.render({**facts, "tell": word, "steps": [step], "plans": []}, {"fitting": URL}, "a4", MADE)
    widest = max(len(line) for page in texts(made) for line in page.splitlines())
    assert bare("".join(pages(made))).count(word) == 3
    assert widest < 200  # of 400 letters; a line of the sheet holds fewer than 150


def test_glyphs_leave_plain_text_alone() -> None:
    assert glyphs.text("4 × T20, 62 mm – “as found”") == "4 × T20, 62 mm – “as found”"
    assert {ord(char) for char in "AÉΩж×−–"} <= glyphs.covered()
    assert ord("日") not in glyphs.covered()


def test_pdf_ua(printed: bytes, facts: Facts) -> None:
    # ISO 14289-1: the identifier in the metadata, a tagged document, its language and its title shown.
    reader = PdfReader(io.BytesIO(printed))
    catalogue: Any = reader.root_object
    xmp = catalogue["/Metadata"].get_object().get_data().decode()
    assert "<pdfuaid:part>1</pdfuaid:part>" in xmp
    assert catalogue["/MarkInfo"]["/Marked"]
    assert catalogue["/Lang"] == "en"
    assert catalogue["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata is not None
    assert reader.metadata.title == f"{facts['title']} {facts['years']}: fitting and wiring"
    assert reader.metadata.creation_date is not None
    assert reader.metadata.creation_date.date() == MADE


def test_headers_repeat_on_every_page_of_a_table(facts: Facts) -> None:
    duty = facts["duties"][0]
    duties = [{**duty, "name": f"P{number}"} for number in range(1, 161)]
    found = pages(pdf.render({**facts, "connectors": [], "duties": duties}, {"wiring": URL}, "a4", MADE))
    with_duties = [page for page in found if re.search(r"\bP\d+ ", page)]
    assert len(with_duties) >= 3
    assert all("Duty What becomes of it Note" in page for page in with_duties)


def test_the_same_input_gives_the_same_bytes_in_any_thread(facts: Facts, printed: bytes) -> None:
    made: list[bytes] = []
    threads = [
        threading.Thread(target=lambda: made.append(pdf.render(facts, {"fitting": URL}, "a4", MADE))) for _ in range(2)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert made == [printed, printed]
    assert pdf.render(facts, {"fitting": URL}, "a4", date(2026, 5, 5)) != printed


def test_the_code_holds_the_address(facts: Facts) -> None:
    # The dark modules of segno's own matrix, drawn row by row.
    drawn = pictures.code(URL)
    matrix = segno.make(URL, micro=False, error="m").matrix
    dark = sum(len(re.findall(r"[^\x00]+", bytes(row).decode("latin-1"))) for row in matrix)
    assert len(re.findall(r"h\d", drawn)) == dark
    assert f'viewBox="0 0 {len(matrix)} {len(matrix)}"' in drawn
    assert view(facts, URL, "a4", MADE)["code"] == drawn


def step(facts: Facts, **changed: Any) -> Facts:
    return {**facts["steps"][0], "cautions": [], "when": "", "state_words": "battery on", **changed}


def rows(facts: Facts, steps: list[Facts]) -> list[Facts]:
    found = sections({**facts, "steps": steps, "plans": []}, pictures.Pictures())
    return [row for section in found for row in section["steps"]]


def test_the_state_of_the_car_stands_where_it_changes(facts: Facts) -> None:
    states = ["battery on", "battery on", "battery off", "battery off"]
    found = rows(facts, [step(facts, state_words=words) for words in states])
    assert [row["state"] for row in found] == ["battery on", "", "battery off", ""]


def test_a_caution_is_short_only_right_after_its_full_text(facts: Facts) -> None:
    for signal, again in {"WARNING": [0, 1, 1, 0, 0], "DANGER": [0] * 5}.items():
        one = {"signal": signal, "hazard": "Hot.", "consequence": "Burns.", "avoid": "Wait.", "when": ""}
        other = {**one, "avoid": "Wait longer."}
        found = rows(facts, [step(facts, cautions=[c] if c else []) for c in (one, one, one, None, one)])
        short = [f"In full before step {number}." if number else "" for number in again]
        assert [say(row["cautions"][0]["short"]) for row in found if row["cautions"]] == short[:3] + short[4:]
        changed = rows(facts, [step(facts, cautions=[c]) for c in (one, other)])
        assert [row["cautions"][0]["short"] for row in changed] == ["", ""]


def test_steps_that_depend_on_the_visit_say_so() -> None:
    targets = [{"id": name, "mark": name.upper()} for name in ("a", "b", "c")]
    plan = {
        "singles": {"a": [0, 1], "b": [2], "c": [3]},
        "sets": {"a+b+c": [0, 2, 3, 4], "a+b": [0, 2], "a+c": [0, 3]},
    }
    assert combined.notes({"targets": targets, "plans": [plan, plan]}) == {
        1: "can drop out with A + B or A + C in one visit",
        4: "only with A + B + C in one visit",
    }


def test_every_fastener_and_tether_has_a_picture() -> None:
    drawn = pictures.Pictures()
    kinds = ["screw", "bolt", "nut", "clip", "scrivet", "hook", "bond", "something"]
    for kind, sort in product(kinds, ["push", "two-leg", "turn-pin", "new sort"]):
        assert drawn.fastener({"kind": kind, "sort": sort, "head": None}) in drawn.svg
    for kind in ("plug", "coax", "fibre", "cable", "rod", "strap", "hose", "something"):
        assert drawn.tether(kind) in drawn.svg
    turned = drawn.fastener({"kind": "scrivet", "sort": "turn-pin", "head": None})
    assert drawn.svg[turned] == clips.clip("scrivet-turn", "scrivet-turn")
    head = drawn.fastener({"kind": "screw", "sort": "T20", "head": {"family": "hexalobular", "label": "T20"}})
    assert drawn.svg[head] == heads.head("hexalobular", "hexalobular")


def test_two_drawings_of_one_name_are_two_pictures() -> None:
    kept = pictures.Pictures()
    keys = [kept.keep(svg) for svg in ("<a/>", "<b/>", "<a/>", "<c/>", "<b/>")]
    assert len(set(keys)) == 3
    assert [kept.svg[key] for key in keys] == ["<a/>", "<b/>", "<a/>", "<c/>", "<b/>"]
