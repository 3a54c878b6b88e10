"""The files of a language follow the English: what changed is in doubt, what is new is empty, what is gone goes."""

from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po

from undertrim.words.language import read
from update_languages import rooms, updated


def template(**texts: str | tuple[str, str]) -> Catalog:
    made = Catalog(charset="utf-8")
    for name, text in texts.items():
        made.add(text, context=f"bay/{name}")
    return made


def test_a_file_follows_the_english(tmp_path: Path) -> None:
    file = tmp_path / "bay.po"
    updated(file, "es", template(back="Back", done="Done", of=("one", "more")))
    text = file.read_text("utf-8").replace('"Back"\nmsgstr ""', '"Back"\nmsgstr "Atrás"')
    file.write_text(text.replace('"Done"\nmsgstr ""', '"Done"\nmsgstr "Hecho"'), "utf-8")
    assert read("es", file).texts == {("bay/back", "Back"): "Atrás", ("bay/done", "Done"): "Hecho"}
    updated(file, "es", template(back="Go back", done="Done", next="Next"))
    assert read("es", file).texts == {("bay/done", "Done"): "Hecho"}
    with file.open("rb") as opened:
        found = {entry.id: (entry.string, entry.fuzzy) for entry in read_po(opened) if entry.id}
    assert found == {"Go back": ("Atrás", True), "Done": ("Hecho", False), "Next": ("", False)}
    same = file.read_bytes()
    updated(file, "es", template(back="Go back", done="Done", next="Next"))
    assert file.read_bytes() == same


def test_the_pages_of_rules_are_no_room(tmp_path: Path) -> None:
    from babel.messages.pofile import write_po

    made = Catalog()
    for context in ("check/rules/unused_part#page", "check/report", "commands#x"):
        made.add(context, context=context)
    with (tmp_path / "undertrim.pot").open("wb") as out:
        write_po(out, made)
    assert {
        room: [entry.context for entry in one if entry.id] for room, one in rooms(tmp_path / "undertrim.pot").items()
    } == {
        "check": ["check/report"],
        "commands": ["commands#x"],
    }
