"""A visit as text for a terminal or a printout: the same facts as the page, top to bottom."""

from collections.abc import Iterator

from undertrim.publish.encoding import Published
from undertrim.publish.facts import kits, told
from undertrim.publish.facts import steps as step_facts
from undertrim.publish.facts.words import listed
from undertrim.publish.terminal import blockers
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Value, message, say


def plan_text(visit: Published) -> str:
    """The whole plan as text, ending in a newline."""
    return "\n".join([*_head(visit), *_before(visit), *_steps(visit), "", closing(), ""])


def _head(visit: Published) -> Iterator[str]:
    jobs = listed(*visit["job_names"], joined="semicolon")
    yield say(message("plan/head", title=visit["title"], vehicle=visit["vehicle"], jobs=jobs))
    if visit["lang_words"]:
        yield visit["lang_words"]
    if visit["demo"]:
        yield say(message("vehicle-page/demo"))
    if visit["variant"]:
        yield say(message("plan/car", car=visit["variant_words"]))
    for variant in visit["open_variants"]:
        yield say(message("plan/not-chosen", ask=variant["ask"]))
        for choice in variant["choices"]:
            label, tell = choice["label"], choice["tell"]
            said = say(message("plan/choice", label=label, tell=tell)) if tell else label
            yield f"    --variant {variant['id']}={choice['id']}  {said}"


def _before(visit: Published) -> Iterator[str]:
    yield ""
    yield say(message("plan/before"))
    yield from blockers.lines(visit["blockers"])
    for entry in visit["cars"]:
        yield from _totals(entry, several=len(visit["cars"]) > 1)
    for entry in visit["fitting"]:
        cars = entry["cars_words"]
        said = (
            message("plan/fitting-in", cars=cars, time=entry["words"])
            if cars
            else message("plan/fitting", time=entry["words"])
        )
        yield from wrapped(said, "  ", "      ")


def _totals(entry: Published, *, several: bool) -> Iterator[str]:
    total = entry["totals"]
    if several:
        kinds = entry["words"] or message("plan/other-cars")
        yield from wrapped(message("plan/for", cars=kinds), "  ", "      ")
    yield from wrapped(message("plan/time", time=total["time_text"]), "  ", "      ")
    tools = listed(*map(_tool, total["tools"])) or message("plan/no-tools")
    yield from wrapped(message("plan/tools", tools=tools), "  ", "      ")
    buy = listed(*map(_purchase, total["buy"])) or message("plan/nothing-to-buy")
    yield from wrapped(message("plan/buy", things=buy), "  ", "      ")
    yield f"  {say(message('plan/fasteners'))}"
    for count in total["fasteners"]:
        fates = ("out", *(fate for fate in _FATES if count[fate]))
        unknown = message("plan/unknown-number") if count["unrecorded"] else ""
        ends = listed(*(message(f"plan/count-{fate}", number=count[fate]) for fate in fates), unknown)
        yield f"    {say(message('plan/count', sort=count['sort'], ends=ends))}"


_FATES = ("back", "moved", "bagged", "binned", "new")


def _tool(tool: Published) -> Value:
    instead = listed(*tool["instead"])
    return message("plan/tool", tool=tool["name"], instead=instead) if instead else str(tool["name"])


def _purchase(item: Published) -> Value:
    count = message("vehicle-page/unknown-number") if item["count"] is None else item["count"]
    return message("plan/purchase", number=count, what=item["what"], part=item["part"])


def _steps(visit: Published) -> Iterator[str]:
    section = ""
    for number, (step, before) in enumerate(zip(visit["steps"], told.told_at(visit["steps"]), strict=True), 1):
        if step["section"] != section:
            section = step["section"]
            yield ""
            yield say(step_facts.section_title(section)).upper()
        for caution, full in zip(step["cautions"], before, strict=True):
            yield from wrapped(_caution(caution, full), "      ! ", "        ")
        yield from _step(number, step)


def _caution(caution: Published, full: int) -> Value:
    rest = (told.short(full),) if full else (caution["consequence"], caution["avoid"])
    signal = _in_cars(message(f"signals/{caution['signal'].lower()}"), caution["when"])
    return message("plan/caution", signal=signal, text=listed(caution["hazard"], *rest, joined="spaced"))


def _step(number: int, step: Published) -> Iterator[str]:
    verb, name = step["verb"], step["title"]
    title = _in_cars(message("plan/title", verb=verb, name=name) if verb else name, step["when"])
    time = f"  ({step['time']})" if step["time"] else ""
    yield f"{number:4}. {say(title)}{time}"
    if step["wait"]:
        yield f"      {say(message('plan/wait', time=step['wait']['text']))}"
    for paragraph in (*step["conflicts"], *step["text"], *kits.lines(step)):
        yield from wrapped(paragraph, "      ", "      ")
    for line in step["fasteners"]:
        yield from wrapped(_fastener(line), "      - ", "        ")
    for line in step["tethers"]:
        yield from wrapped(_tether(line), "      - ", "        ")


def _fastener(line: Published) -> Value:
    under = message("plan/under", part=line["hidden_by"]) if line["hidden_by"] else ""
    said = listed(line["text"], line["detail"], under)
    if line["fate"] not in ("out", "back"):
        said = message("plan/fate", fasteners=said, fate=line["fate_words"])
    return _in_cars(_bracketed(said, line["later_words"]), line["when"])


def _tether(line: Published) -> Value:
    name = _bracketed(tether_name(line), line["circuit_words"])
    said = message("plan/act", tether=name, act=_bracketed(line["act_words"], line["later_words"]))
    there = _in_cars(said, line["when"])
    return message("plan/how", act=there, how=line["how"]) if line["how"] else there


def _bracketed(text: Value, remark: str) -> Value:
    """A text with a remark behind it, if there is one."""
    return message("plan/remark", text=text, remark=remark) if remark else text


def _in_cars(text: Value, cars: str) -> Value:
    """A text with the cars that it is for, where those are not all."""
    return message("plan/in-cars", text=text, cars=cars) if cars else text


def tether_name(line: Published) -> str:
    """A tether with the part it is on where the step is about something else: `Antenna plug (Factory radio, left)`."""
    name: str = line["name"]
    on = listed(line["part"], message(f"sides/{line['side']}") if line["side"] else "")
    return say(message("plan/tether-on", name=name, on=on)) if on else name
