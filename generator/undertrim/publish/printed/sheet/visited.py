"""A visit as its printed sheet wants it: the job at a glance, its steps, the joint, and what is fitted. Nothing that is not in the visit."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from undertrim.derive import cars
from undertrim.derive.fit.shopping import Item
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.visit.visit import Visit
from undertrim.derive.wiring.leads import NoLeads
from undertrim.publish.encoding import Published, Spread, said
from undertrim.publish.facts import gear_card, joints, names
from undertrim.publish.facts.drawn import drawn
from undertrim.publish.facts.fit import ShownCheck, of_fit
from undertrim.publish.facts.from_above import from_above
from undertrim.publish.facts.identity import Identity, identity
from undertrim.publish.facts.removal_order import removal_order
from undertrim.publish.facts.steps import section_title
from undertrim.publish.facts.targets import targets
from undertrim.publish.facts.true_size import true_sizes
from undertrim.publish.facts.visit import of
from undertrim.publish.pictures import above, order
from undertrim.publish.pictures.drawings import true_size
from undertrim.publish.printed.sheet import frame, glyphs, steps
from undertrim.publish.printed.sheet.frame import Paper
from undertrim.publish.printed.sheet.joints import joint
from undertrim.publish.printed.sheet.photos import Photos
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.publish.printed.sheet.view import about, added, restraint
from undertrim.publish.terminal.shop import ShownVerdict, shop_data
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.own_language import OwnLanguage
from undertrim.record.photo_files import Album
from undertrim.words import Value, message, say

_NARROW = 260
"""Units of a drawing that has half a column: what is written in it is 6 pt."""


@dataclass(frozen=True, slots=True)
class VisitHead:
    """Which cars a visit is about, as the frame and the first lines want it."""

    address: str
    demo: bool
    lang_words: OwnLanguage
    data_date: str
    cars: Spread[Identity]


def view(made: Visit, url: str, paper: Paper, day: date, album: Album | None = None) -> Published:
    """Everything the template of a visit's sheet reads. `url` is the address of the visit, `day` that of printing, `album`
    the photographs of its record; without it the sheet has none.

    Raises what `publish.facts.visit.of` raises.
    """
    visit, pictures, facts = of(made), Pictures(), _facts(made)
    photos = Photos(made, album, pictures)
    shown = said(
        {
            "about": [{"label": label, "value": value} for label, value in about(facts) if value != ""],
            "chosen": list(_chosen(made)),
            "variants": visit["open_variants"],
            "jobs": [f"{mark}  {name}" for mark, name in _jobs(made, visit)],
            "car_picture": _from_above(made, visit, pictures),
            "order": [pictures.keep(one) for one in order.on_paper(_order(made, visit))],
            "true_sizes": list(_true_sizes(made, pictures)),
            "blockers": visit["blockers"],
            "restraints": _restraints(made, visit),
            "totals": [{**added([entry["totals"]]), "cars": _apart(entry, visit)} for entry in visit["cars"]],
            "lists": list(_lists(made)),
            "sections": steps.sections(_steps(visit, photos, pictures), pictures),
            "mark_key": pictures.key,
            "joints": list(_joints(made, pictures)),
            "fitted": _wide_first(
                _fitted(made, opening, pictures) for opening in made.openings if opening.id in made.gear
            ),
        }
    )
    return frame.framed(facts, shown, url, paper, day, pictures)


def _facts(made: Visit) -> Published:
    """Which cars they are, as the frame and the first lines want it."""
    return head(made.record, made.address)


def head(record: VehicleRecord, address: str) -> Published:
    """Whose sheet it is."""
    found: Published = said(
        VisitHead(
            address=address,
            demo=record.demo == "yes",
            lang_words=OwnLanguage(record.lang),
            data_date=max((item.on for item in record.evidence.values()), default=""),
            cars=identity(record),
        )
    )
    return found


def _chosen(made: Visit) -> Iterator[Published]:
    """How the car is told by each answer."""
    known = cars.variants(made.record)
    for name, choice in made.answers.items():
        picked = known[name].choices[choice]
        yield {"ask": known[name].ask, "choices": [{"label": picked.label, "tell": picked.tell}]}


def _jobs(made: Visit, visit: Published) -> Iterator[tuple[str, str]]:
    """What is done, each with its mark in the picture of the car."""
    marks = {target.id: target.mark for target in targets(made.record)}
    yield from ((marks[job], name) for job, name in zip(visit["jobs"], visit["job_names"], strict=True))


def _from_above(made: Visit, visit: Published, pictures: Pictures) -> Published:
    """The car from above with what this visit works at."""
    wanted = [target for target in targets(made.record) if target.id in visit["jobs"]]
    steps = [{**step, "targets": []} for step in visit["steps"]]
    facts = {**said({"targets": wanted, "from_above": from_above(made.record)}), "steps": steps}
    title = say(message("visit-sheet/from-above"))
    return {"title": title, "picture": pictures.keep(above.on_paper(title, facts, made.car))}


def _order(made: Visit, visit: Published) -> Sequence[Published]:
    """What hides what, of what this visit takes off and for what."""
    found: Sequence[Published] = said(
        removal_order(made.record, [*(step["id"] for step in visit["steps"]), *visit["jobs"]])
    )
    return found


def _true_sizes(made: Visit, pictures: Pictures) -> Iterator[Published]:
    """Each sort of screw, bolt and nut in true size, and before them the ruler that proves the scale."""
    found = said(true_sizes(made.steps))
    if found:
        drawn, wide = true_size.ruler(say(message("visit-sheet/ruler")))
        yield {"picture": pictures.keep(drawn), "width": wide, "name": ""}
    for one in found:
        drawn, wide = true_size.fastener(
            glyphs.text(one["name"]), one["family"], one["across"], one["thread"], one["length"]
        )
        yield {"picture": pictures.keep(drawn), "width": wide, "name": one["name"]}


def _restraints(made: Visit, visit: Published) -> list[str]:
    """The airbags and belt parts where this visit works."""
    areas = {step["area"] for step in visit["steps"]} | {opening.area for opening in made.openings}
    record = made.record.areas.items()
    return [
        restraint({"area": name, "items": list(area.restraints)})
        for name, area in record
        if area.restraints and name in areas
    ]


def _apart(entry: Published, visit: Published) -> Value:
    """The cars of some totals; empty where those of the visit all come to the same."""
    return (entry["words"] or message("plan/other-cars")) if len(visit["cars"]) > 1 else ""


def _steps(visit: Published, photos: Photos, pictures: Pictures) -> Published:
    """The steps as rows are made of; on the sheet of one visit no step is for some of its jobs, and none rests on a table of evidence."""
    return {
        "targets": [],
        "sections": [{"id": name, "title": section_title(name)} for name in dict.fromkeys(_sections(visit))],
        "steps": [
            {**step, "targets": [], "source": [], "pictured": photos.at(step), "panel": pictures.panel(step)}
            for step in visit["steps"]
        ],
    }


def _sections(visit: Published) -> Iterator[str]:
    return (step["section"] for step in visit["steps"])


def _lists(made: Visit) -> Iterator[Published]:
    """What to have at hand: the gear with its verdict, what goes between and what is used up."""
    for entry in shop_data(made.vehicle, made.targets, made.orders).lists:
        yield {
            "cars": entry.cars_words,
            "verdicts": [words for one in entry.verdicts for words in (_verdict(one), *one.taken)],
            "order": list(map(_counted, entry.order)),
            "to_get": list(map(_counted, entry.to_get)),
            "used_up": entry.used_up,
            "closed": entry.closed,
            "fitting": message("plan/fitting", time=entry.fitting) if entry.fitting else "",
        }


def _verdict(one: ShownVerdict) -> Value:
    values = {"opening": one.opening_name, "gear": one.name, "headline": one.headline}
    return message("shopping/verdict", **values)


def _counted(item: Item) -> Value:
    return message("shopping/item", number=item.count, what=item.what, opening=item.opening)


def _joints(made: Visit, pictures: Pictures) -> Iterator[Published]:
    try:
        for joined in made.joints:
            yield joint(said(joints.of(made.record, joined)), pictures)
    except NoLeads as error:
        yield {"name": "", "missing": error.said}


def _wide_first(fitted: Iterable[Published]) -> list[Published]:
    """Those with two drawings, which are low, before those with a tall one: so a column is filled to its end."""
    return sorted(fitted, key=lambda one: -len(one["drawings"]))


def _fitted(made: Visit, opening: Opening, pictures: Pictures) -> Published:
    """The chosen gear in its opening: drawn, and each check with its numbers, for each group of cars in which it is the same."""
    answers = [found for found in made.verdicts if found.opening.id == opening.id]
    return {
        "name": opening.name,
        "drawings": pictures.openings(said(drawn(made.vehicle, opening, answers)), _NARROW),
        "cars": [
            {
                "cars": names.kinds_of_car(made.record, found.cars),
                "name": one.name,
                "headline": one.headline,
                "checks": [_check(check) for check in of_fit(one, made.vehicle.stock).checks],
                "notes": list(_notes(one, made)),
            }
            for found in answers
            for one in found.fits
        ],
    }


def _check(check: ShownCheck) -> Published:
    return {"words": check.words, "verdict": check.verdict, "plain": check.verdict == "fits"}


def _notes(fit: Fit, made: Visit) -> Iterator[Value]:
    """What to know of it: what is not simply on a wire, notes, and what its record says for the hands but for what stands above all."""
    one = of_fit(fit, made.vehicle.stock)
    for need in one.functions:
        if need.by != "wire":
            yield message("sheet/need", name=need.name, words=need.words)
    yield from (*one.seen, *one.notes)
    demo = (gear_card.DEMO,) if made.record.demo == "yes" else ()  # the frame says so of all of it
    yield from gear_card.of_fit(fit, made.vehicle.stock, (gear_card.FITTING, *demo))
