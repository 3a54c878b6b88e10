"""What is said the same has one entry, which a translator writes once. What has several stands here with its reason."""

from collections import defaultdict

from undertrim.words.catalogue import english, rooms

WORD_OF_TWO_THINGS = "one English word for two things, which other languages may call by two"
BY_ITS_CODE = "each word of a set has an entry of that set, since the code is made of it"
OF_ITS_TABLE = "a heading, or what stands in a cell, and elsewhere a word in a sentence"
GOES_ON = "lists of different sorts, alike in English only"

TWICE = {
    "new": "in other languages it goes by what it speaks of",
    "The shape of the body": BY_ITS_CODE,
    "unknown": BY_ITS_CODE,
    "none": BY_ITS_CODE,
    "Yes": BY_ITS_CODE,
    "No": BY_ITS_CODE,
    "fits": BY_ITS_CODE,
    "close": BY_ITS_CODE,
    "panel": BY_ITS_CODE,
    "hole": BY_ITS_CODE,
    "pulses": BY_ITS_CODE,
    "LOST": BY_ITS_CODE,
    "door skin": BY_ITS_CODE,
    "mounting face": BY_ITS_CODE,
    "impedance": BY_ITS_CODE,
    "clear front": BY_ITS_CODE,
    "spacer": BY_ITS_CODE,
    "a spacer": BY_ITS_CODE,
    "kit": BY_ITS_CODE,
    "speaker": BY_ITS_CODE,
    "amplifier": BY_ITS_CODE,
    "an amplifier": BY_ITS_CODE,
    "restraint wiring": BY_ITS_CODE,
    "dash": BY_ITS_CODE,
    "cannot be told": BY_ITS_CODE,
    "Switch the ignition on. Leave the engine off.": BY_ITS_CODE,
    "Engine": WORD_OF_TWO_THINGS,
    "Back": WORD_OF_TWO_THINGS,
    "left": WORD_OF_TWO_THINGS,
    "right": WORD_OF_TWO_THINGS,
    "up": WORD_OF_TWO_THINGS,
    "down": WORD_OF_TWO_THINGS,
    "back": WORD_OF_TWO_THINGS,
    "front": WORD_OF_TWO_THINGS,
    "rear": WORD_OF_TWO_THINGS,
    "seat": WORD_OF_TWO_THINGS,
    "phone": WORD_OF_TWO_THINGS,
    "hazard": WORD_OF_TWO_THINGS,
    "settings": WORD_OF_TWO_THINGS,
    "value": WORD_OF_TWO_THINGS,
    "metal": WORD_OF_TWO_THINGS,
    "wiring": WORD_OF_TWO_THINGS,
    "level": WORD_OF_TWO_THINGS,
    "text": WORD_OF_TWO_THINGS,
    "Sound": WORD_OF_TWO_THINGS,
    "opening": WORD_OF_TWO_THINGS,
    "note:": WORD_OF_TWO_THINGS,
    "basket": WORD_OF_TWO_THINGS,
    "out": OF_ITS_TABLE,
    "Car": OF_ITS_TABLE,
    "not recorded": OF_ITS_TABLE,
    "{first} and {last}": GOES_ON,
    "{first} or {last}": GOES_ON,
}


def twice() -> dict[str, list[str]]:
    """The codes of each text that has several."""
    codes: dict[tuple[str | None, ...], list[str]] = defaultdict(list)
    for room in rooms():
        for name, entry in english(room).items():
            codes[tuple(map(entry.get, ("says", "one", "way_out")))].append(f"{room}/{name}")
    return {str(texts[0]): found for texts, found in codes.items() if len(found) > 1}


def test_no_text_of_the_catalogue_has_two_entries() -> None:
    assert {text: codes for text, codes in twice().items() if text not in TWICE} == {}


def test_what_is_listed_has_two_entries() -> None:
    assert TWICE.keys() - twice().keys() == set()
