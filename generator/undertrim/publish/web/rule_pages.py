"""The reference pages made from our own sources: a page for each rule from its docstring, and the list of them."""

import re
from collections.abc import Mapping

from undertrim.check.findings import Rule
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES, RECORD_RULES
from undertrim.check.reports import LEVELS
from undertrim.publish.web.field_pages import field_page
from undertrim.words import ENGLISH, docs, message, once_per_language, say, spoken


@once_per_language
def pages() -> Mapping[str, str]:
    """Markdown by path: `rules/index`, `rules/<id>`, `reference/index`."""
    rules: dict[str, Rule] = {**RECORD_RULES, **GEAR_RULES, **COLLECTION_RULES}
    told = {name: docs.page(f"check/rules/{name.replace('-', '_')}", rule.__doc__) for name, rule in rules.items()}
    listed = [
        f"| [{name}]({name}.md) | {say(LEVELS[rule.LEVEL])} | {docs.first_line(told[name]).replace('|', _BAR)} |"
        for name, rule in sorted(rules.items())
    ]
    single = {f"rules/{name}": f"# {name}\n\n{_lined(text)}" for name, text in told.items()}
    return {"rules/index": "\n".join([*_head(), *listed, ""]), **single, "reference/index": field_page()}


_BAR = "\\|"
_MESSAGE = re.compile(r"^(?:error|warning): .*$", re.MULTILINE)


def _lined(text: str) -> str:
    """A page with each message of the check on a line of its own, as a terminal has them."""
    return _MESSAGE.sub(lambda found: f"{found[0]}  ", text)


def _head() -> list[str]:
    heads = " | ".join(map(say, (message("reference/rule"), message("reference/level"), message("reference/what"))))
    about = f"# {say(message('reference/rules'))}\n\n{say(message('reference/about-rules'))}.\n"
    if spoken() != ENGLISH:
        about += f"\n{say(message('reference/rules-in-english'))}\n"
    return [about, f"| {heads} |", "|---|---|---|"]
