"""A file as it must be typed, where what was meant is certain."""

from undertrim.record.source import Source, read_text


def mended(source: Source) -> str:
    """The text of a file with every mend that could be no other; as it is where there is none, or where it would say something else.

    Line ends stay. `source` is the file as typed.
    """
    lines = source.text.splitlines(keepends=True)
    for mend in source.mends:
        for number, line in mend.edit if mend.certain else ():
            lines[number] = line + lines[number][len(lines[number].rstrip("\r\n")) :]
    text = "".join(lines)
    again = read_text(text, source.path)
    fewer = len(again.problems) < len(source.problems)
    return text if fewer and again.data == source.data else source.text
