"""The schemas of `schema/` as one file for each kind of record, in words that any editor knows: `schema/editor/`.

Draft 7 of JSON Schema is what servers of the language YAML have in common. What our own words say (`schema.py`, `shapes.py`) is said in
its words: short forms, lists of one, groups, quantities as patterns. What cannot be said so is left out: an editor shows what may be
typed, and `undertrim check` what is wrong. A scalar may read as a number there and is a text here, so both are let through.
"""

# Long because it is one walk: every form that a value may have is made from one node.

import json
import re
import sys
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.publish.editor_scalars import Made, english, kept, scalar
from undertrim.record.fields import Node, node_at, root
from undertrim.record.schema import WORDS, asked_by
from undertrim.record.spreading import BACK

KINDS = ("vehicle", "gear")


def bundled(kind: str) -> Made:
    """The schema of one kind of record: vehicle or gear."""
    making = _Making()
    whole = making.form(root(kind))
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        **whole,
        "definitions": dict(sorted(making.defined.items())),
    }


def text(kind: str) -> str:
    """The same as it stands in its file."""
    return json.dumps(bundled(kind), indent=1, ensure_ascii=False) + "\n"


def place(kind: str) -> Path:
    """Its file."""
    return resources.top("schema") / "editor" / f"{kind}.schema.json"


def write() -> None:
    """Write the files anew."""
    for kind in KINDS:
        place(kind).parent.mkdir(exist_ok=True)
        place(kind).write_text(text(kind), encoding="utf-8")


@dataclass(slots=True)
class _Making:
    """One schema on its way, with what is defined once for all its places."""

    defined: dict[str, Made] = field(default_factory=dict)
    open_: set[str] = field(default_factory=set)

    def value(self, node: Node, *, back: bool = False, alone: bool = False) -> Made:
        """What may be typed for a node: a definition where it stands in one and is not told otherwise.

        `back`: also the word that takes back what is shared; `alone`: it stands for a list of one, so in no list itself.
        """
        document, steps = node.home
        name = f"{document}-{steps[-1]}"
        if (
            back
            or alone
            or steps[:1] != ("$defs",)
            or len(steps) != 2
            or node.schema != node_at(node.home).schema
            or "enum" in node.schema
        ):
            return self.form(node, back=back, alone=alone)
        if name not in self.open_:
            self.open_.add(name)
            self.defined[name] = self.form(node)
        return {"$ref": f"#/definitions/{name}"}

    def form(self, node: Node, *, back: bool = False, alone: bool = False) -> Made:
        """What may be typed for a node, said here."""
        says = node.schema
        told: Made = {word: english(says[word]) for word in ("title", "description") if word in says}
        if "examples" in says:
            told["examples"] = says["examples"]
        forms = [form for form in self._forms(node, alone=alone) if form]
        if back and not any(_takes(form, BACK) for form in forms):
            forms.append({"const": BACK})
        return {**told, **forms[0]} if len(forms) == 1 else {**told, "anyOf": forms}

    def _forms(self, node: Node, *, alone: bool) -> list[Made]:
        says, short = node.schema, node.schema.get("short", {})
        if "enum" in says:
            return [{"enum": list(says["enum"])}]
        types = [says["type"]] if isinstance(says.get("type"), str) else list(says.get("type", ()))
        forms = [scalar(says)] if {"string", "integer"} & {*types} else []
        if short.get("text"):
            forms.append(self._part(node, short["text"]))
        if "object" in types:
            forms.append(self._mapping(node))
        if short.get("key"):
            forms.append(self._behind_key(node, short["key"], short["list"]))
        elif short.get("list") and not alone:
            forms.append(self._fields(node, short["list"]))
        if "array" in types:
            forms += self._list(node, lone="string" not in types)
        return forms

    def _list(self, node: Node, *, lone: bool) -> list[Made]:
        """A list, and its only item without brackets."""
        item = node.child(0)
        assert item
        whole = {"type": "array", "items": self.value(item), **kept(node.schema, "Items")}
        short = item.schema.get("short", {})
        return [whole, self.value(item, alone=bool(short.get("list")) and "key" not in short)] if lone else [whole]

    def _part(self, node: Node, name: str) -> Made:
        child = node.child(name)
        assert child
        return self.value(child)

    def _fields(self, node: Node, names: list[str]) -> Made:
        """A list of the usual fields in place of a mapping."""
        items = [self._part(node, name) for name in names]
        return {"type": "array", "items": items, "minItems": 1, "maxItems": len(items)}

    def _behind_key(self, node: Node, key: str, names: list[str]) -> Made:
        """A mapping of one: a word of a field, and behind it the others by name, or the usual ones as a list."""
        word, others = node.child(key), [name for name in node.schema["properties"] if name != key]
        assert word
        mapping = {
            "type": "object",
            "properties": {name: self._part(node, name) for name in others},
            "additionalProperties": False,
            "required": [name for name in node.schema.get("required", ()) if name != key],
        }
        behind = {"anyOf": [{**self._fields(node, names), "minItems": len(names)}, mapping]}
        words = dict.fromkeys(word.schema["enum"], behind)
        return {
            "type": "object",
            "properties": words,
            "additionalProperties": False,
            "minProperties": 1,
            "maxProperties": 1,
        }

    def _mapping(self, node: Node) -> Made:
        says = node.schema
        made: Made = {"type": "object", **kept(says, "Properties")}
        if "properties" in says:
            made |= self._named_fields(node)
        if isinstance(says.get("additionalProperties"), dict):
            made |= self._own_names(node)
        if isinstance(says.get("propertyNames"), dict):
            made["propertyNames"] = _names(node)
        if "oneOf" in says:
            made["oneOf"] = says["oneOf"]
        return made

    def _named_fields(self, node: Node) -> Made:
        says = node.schema
        fields = {name: self._field(node, name) for name in (*says["properties"], *says.get("aside", ()))}
        follow = {name for name, one in says["properties"].items() if "follows" in one or "among" in one}
        for name in (name for name, one in says["properties"].items() if "among" in one):
            known = f"{node.home[1][-1]}-{name}"
            self.defined[known], fields[name] = fields[name], {"$ref": f"#/definitions/{known}"}
        together = {name: _together(node, name, fields) for name in says.get("together", ())}
        fields |= together
        made: Made = {"properties": fields, "additionalProperties": False}
        taken = node.home[0] == "vehicle" and bool({*node.home[1][-1:]} & _MAY_BE_TAKEN)
        if needed := [name for name in says.get("required", ()) if name not in follow and not taken]:
            made["required"] = needed
        if "allOf" in says:
            made["allOf"] = [_condition(branch, follow, {*together}, taken=taken) for branch in says["allOf"]]
        return made

    def _field(self, node: Node, name: str) -> Made:
        if name in node.schema.get("aside", ()):
            return self.value(node_at(node.home, "aside", name))
        child = node.child(name)
        assert child
        if "group" in child.schema:
            return self._grouped(child)
        made = self.value(child, back=child.schema.get("follows") == "behind")
        made = self._along(node, made, child.schema["also"]) if "also" in child.schema else made
        return self._differing(made) if node.home[0] == "vehicle" and node.home[1] and name != "when" else made

    def _differing(self, made: Made) -> Made:
        """A value that may differ between kinds of car, or sides: a list of values, each with its cars or its side."""
        self.defined["differs"] = {
            "type": "array",
            "minItems": 2,
            "items": {"type": "object", "anyOf": [{"required": ["when"]}, {"required": ["side", "is"]}]},
        }
        differs = {"$ref": "#/definitions/differs"}
        if "anyOf" in made:
            return {**made, "anyOf": [*made["anyOf"], differs]}
        told: Made = {word: made.pop(word) for word in ("title", "description", "examples") if word in made}
        return {**told, "anyOf": [made, differs]}

    def _along(self, node: Node, made: Made, names: list[str]) -> Made:
        """A field that may stand in one list with others beside it: any order of those is read."""
        others = {"anyOf": [self._beside(node, name) for name in names if node.child(name)]}
        told: Made = {word: made.pop(word) for word in ("title", "description", "examples") if word in made}
        listed = {"type": "array", "items": [dict(made), *([others] * len(others["anyOf"]))], "minItems": 1}
        return {**told, "anyOf": [made, {**listed, "maxItems": len(others["anyOf"]) + 1}]}

    def _beside(self, node: Node, name: str) -> Made:
        """A field as an entry of such a list: in its own words for that, where it has some."""
        child = node.child(name)
        assert child
        return {"enum": list(child.schema["listed"])} if "listed" in child.schema else self.value(child)

    def _own_names(self, node: Node) -> Made:
        child = node.child("*")
        assert child
        made = self.value(child)
        if node.home[0] == "vehicle" and node.home[1]:
            made = {"if": {"const": BACK}, "else": self._differing(made)}
        return {"additionalProperties": made}

    # Groups

    def _grouped(self, node: Node) -> Made:
        """A section whose things may stand in groups: what holds the name of the section is one."""
        section, group, thing = node.home[1][-1], node_at(node.home, "group"), node.child("*")
        assert thing
        form = self.form(node)
        shared = set(group.schema["properties"]) - {section}
        alone, in_group = f"{section}-alone", f"{section}-group"
        self.defined[alone] = self._sharing(thing, shared)
        inside = self.form(group)
        inside["properties"][section] |= {
            "additionalProperties": {"$ref": f"#/definitions/{alone}"},
            "propertyNames": form["propertyNames"],
        }
        self.defined[in_group] = inside
        one = {"$ref": f"#/definitions/{alone}"}
        parted = {
            "if": {"required": [section], "type": "object"},
            "then": {"$ref": f"#/definitions/{in_group}"},
            "else": self._differing(one) if "anyOf" in self.defined[alone] else one,
        }
        ids = _names(node_at(("common", ("$defs", "id"))))  # a group has one of its own, whatever its things are called
        return {**form, "propertyNames": ids, "additionalProperties": parted}

    def _sharing(self, thing: Node, shared: set[str]) -> Made:
        """A thing that may take back what its group shares."""
        form = self.form(thing)
        for block in form.get("anyOf", [form]):
            for name in shared if "properties" in block else ():
                child = thing.child(name)
                assert child
                block["properties"][name] = self.value(child, back=True)
        return form


_MAY_BE_TAKEN = {"part", "prep", "opening", "connector", "run", "tether", "pin"}
"""Blocks of which another record may say a part: what they lack only `undertrim check` knows."""


def _takes(form: Made, word: str) -> bool:
    """Whether a form lets a word through; a list of words is then given it."""
    if "enum" in form:
        form["enum"] = [*dict.fromkeys([*form["enum"], word])]
        return True
    types = form.get("type", ())
    return "string" in types and re.search(form.get("pattern", ""), word) is not None


def _names(node: Node) -> Made:
    """What the keys of a mapping may be, without words for people: editors show those of the value."""
    names = node.schema.get("propertyNames", node.schema)
    if "$ref" in names:
        names = node_at(node.home, "propertyNames").schema
    return {word: said for word, said in names.items() if word in ("pattern", "enum", "maxLength")}


def _together(node: Node, name: str, fields: Mapping[str, Made]) -> Made:
    """A mapping in which some fields of a block may stand."""
    says = node.schema["together"][name]
    told = {word: english(says[word]) for word in ("title", "description")}
    own = {field: fields[field] for field, one in node.schema["properties"].items() if one.get("among") == name}
    return {
        **told,
        "examples": says["examples"],
        "type": "object",
        "properties": own,
        "additionalProperties": False,
        "minProperties": 1,
    }


def _condition(branch: Mapping[str, Any], follow: set[str], together: set[str], *, taken: bool) -> Made:
    """What is needed and allowed where a field has a value."""
    name, wanted = asked_by(branch["if"])
    then = {word: said for word, said in branch["then"].items() if word not in WORDS}
    if "propertyNames" in then:
        then["propertyNames"] = {"enum": [*then["propertyNames"]["enum"], *sorted(together)]}
    then["required"] = [one for one in then.get("required", ()) if one not in follow and not taken]
    return {"if": {"properties": {name: {"enum": wanted}}, "required": [name]}, "then": then}


if __name__ == "__main__":
    write()
    sys.exit(0)
