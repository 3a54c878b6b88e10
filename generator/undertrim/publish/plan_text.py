"""A visit as text for a terminal or a printout: the same facts as the page, top to bottom."""

import textwrap
from collections.abc import Iterator, Mapping
from typing import Any

from undertrim.publish.facts import kits, told
from undertrim.publish.facts import steps as step_facts

Data = Mapping[str, Any]
WIDTH = 100


def plan_text(visit: Data) -> str:
    """The whole plan as text, ending in a newline."""
    return "\n".join([*_head(visit), *_before(visit), *_steps(visit), "", _CLOSING, ""])


_CLOSING = "The maker's information, local codes and licensed practice come first."


def _head(visit: Data) -> Iterator[str]:
    yield f"{visit['title']} ({visit['vehicle']}): {'; '.join(visit['job_names'])}"
    if visit["demo"]:
        yield "Demonstration data: this vehicle is invented."
    if visit["variant"]:
        yield f"Car: {visit['variant_words']}"
    for variant in visit["open_variants"]:
        yield f"Not chosen, so every kind is covered: {variant['ask']}"
        for choice in variant["choices"]:
            tell = f": {choice['tell']}" if choice["tell"] else ""
            yield f"    --variant {variant['id']}={choice['id']}  {choice['label']}{tell}"


def _before(visit: Data) -> Iterator[str]:
    yield ""
    yield "BEFORE THE FIRST SCREW"
    for item in visit["blockers"]:
        when = f" [{item['when']}]" if item["when"] else ""
        yield from _wrapped(f"{item['weight'].upper()}: {item['title']}{when}. {item['text']}", "  ", "      ")
    for entry in visit["cars"]:
        yield from _totals(entry, several=len(visit["cars"]) > 1)


def _totals(entry: Data, *, several: bool) -> Iterator[str]:
    total = entry["totals"]
    if several:
        yield from _wrapped(f"For: {entry['words'] or 'the other kinds of car'}", "  ", "      ")
    yield from _wrapped(f"Time: {total['time_text']}", "  ", "      ")
    tools = [
        tool["name"] + (f" (or {', '.join(tool['instead'])})" if tool["instead"] else "") for tool in total["tools"]
    ]
    yield from _wrapped(f"Tools: {', '.join(tools) or 'none recorded'}", "  ", "      ")
    buy = [
        f"{item['count'] if item['count'] is not None else 'unknown number'} × {item['what']} ({item['part']})"
        for item in total["buy"]
    ]
    yield from _wrapped(f"To buy new: {', '.join(buy) or 'nothing single-use is recorded'}", "  ", "      ")
    yield "  Fasteners out = back in + moved + bagged; new ones replace those not reused:"
    for count in total["fasteners"]:
        parts = [f"{count['out']} out", *(f"{count[fate]} {word}" for fate, word in _FATES if count[fate])]
        unknown = ["and an unknown number"] if count["unrecorded"] else []
        yield f"    {count['sort']}: {', '.join([*parts, *unknown])}"


_FATES = (("back", "back in"), ("moved", "moved"), ("bagged", "bagged"), ("new", "new"))


def _steps(visit: Data) -> Iterator[str]:
    section = ""
    for number, (step, before) in enumerate(zip(visit["steps"], told.told_at(visit["steps"]), strict=True), 1):
        if step["section"] != section:
            section = step["section"]
            yield ""
            yield step_facts.SECTION_TITLES[section].upper()
        for caution, full in zip(step["cautions"], before, strict=True):
            yield from _wrapped(_caution(caution, full), "      ! ", "        ")
        yield from _step(number, step)


def _caution(caution: Data, full: int) -> str:
    rest = told.short(full) if full else f"{caution['consequence']} {caution['avoid']}"
    when = f" [{caution['when']}]" if caution["when"] else ""
    return f"{caution['signal']}{when}: {caution['hazard']} {rest}"


def _step(number: int, step: Data) -> Iterator[str]:
    title = f"{step['verb']} {step['title']}".strip()
    when = f" [{step['when']}]" if step["when"] else ""
    time = f"  ({step['time']})" if step["time"] else ""
    yield f"{number:4}. {title}{when}{time}"
    if step["wait"]:
        yield f"      wait: {step['wait']['text']}"
    for paragraph in (*step["conflicts"], *step["text"], *kits.lines(step)):
        yield from _wrapped(paragraph, "      ", "      ")
    for line in step["fasteners"]:
        yield from _wrapped(_fastener(line), "      - ", "        ")
    for line in step["tethers"]:
        yield from _wrapped(_tether(line), "      - ", "        ")


def _fastener(line: Data) -> str:
    fate = f": {line['fate_words']}" if line["fate"] not in ("out", "back") else ""
    later = f" ({line['later_words']})" if line["later"] else ""
    under = f", under {line['hidden_by']}" if line["hidden_by"] else ""
    detail = f", {line['detail']}" if line["detail"] else ""
    when = f" [{line['when']}]" if line["when"] else ""
    return f"{line['text']}{detail}{under}{fate}{later}{when}"


def _tether(line: Data) -> str:
    restraint = f" ({line['circuit_words']})" if line["circuit_words"] else ""
    when = f" [{line['when']}]" if line["when"] else ""
    how = f". {line['how']}" if line["how"] else ""
    later = f" ({line['later_words']})" if line["later"] else ""
    return f"{tether_name(line)}{restraint}: {line['act_words']}{later}{when}{how}"


def tether_name(line: Data) -> str:
    """A tether with the part it is on where the step is about something else: `Antenna plug (Factory radio, left)`."""
    on = ", ".join(part for part in (line["part"], line["side"]) if part)
    return f"{line['name']} ({on})" if on else str(line["name"])


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )
