"""The reference pages made from our own sources: a page for each rule from its docstring, and the list of them."""

from undertrim.check.findings import CollectionRule, GearRule, RecordRule
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES, RECORD_RULES
from undertrim.publish.field_pages import field_page


def pages() -> dict[str, str]:
    """Markdown by path: `rules/index`, `rules/<id>`, `reference/index`."""
    rules: dict[str, RecordRule | CollectionRule | GearRule] = {**RECORD_RULES, **GEAR_RULES, **COLLECTION_RULES}
    listed = [
        f"| [{name}]({name}.md) | {rule.LEVEL} | {_summary(rule.__doc__)} |" for name, rule in sorted(rules.items())
    ]
    index = "\n".join([_INTRODUCTION, *listed, ""])
    single = {f"rules/{name}": f"# {name}\n\n{rule.__doc__ or ''}" for name, rule in rules.items()}
    return {"rules/index": index, **single, "reference/index": field_page()}


def _summary(doc: str | None) -> str:
    return (doc or "").strip().splitlines()[0].replace("|", "\\|")


_INTRODUCTION = """# Rules

What `undertrim check` looks for, beyond the shape that the schema asks for. A message ends with the rule's name in brackets.

A rule that is wrong about one line can be silenced there, with a reason: `# allow <rule>: <why>`. An allow that hides nothing
is itself an error, so it goes when it is no longer needed.

| rule | level | what |
|---|---|---|"""
