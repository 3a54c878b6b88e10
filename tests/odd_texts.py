"""Odd but readable texts of records: any layout that YAML allows, with comments wherever one may stand."""

from hypothesis import strategies as st

TEXTS = (
    "plain words",
    "no",
    "2026-03-02",
    "4",
    "0x1F",
    "with: a colon",
    "with, comma [and] brackets",
    "it's",
    'a "quoted" word',
    "back\\slash",
    "# not a comment",
    "- dash",
    "ends:",
    "? which",
    "какой-то текст",
    "中文文字",
    "עברית",
    "ends ",
    " begins",
    "very long " * 30 + "end",
    "null",
    "~",
    "10:30",
    "*star",
    "%part",
    "=",
)
SEVERAL = ("one\ntwo\n", "one\n\ntwo", "  deeper first\nthen\n", "one\n  deeper\nback\n\n\n", "one  \ntwo\n")


def quoted(text: str) -> str:
    """In double quotes."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


@st.composite
def records(draw: st.DrawFn) -> str:
    """A text with the fields of a vehicle record at odd places in odd order, some of them unknown."""
    # Long because it is one grammar: lists, mappings and scalars stand in each other, at any depth.
    lines: list[str] = []
    numbers = iter(range(10**6))

    def note(margin: int) -> None:
        for _ in range(draw(st.sampled_from((0, 0, 0, 0, 1, 2)))):
            lines.append(draw(st.sampled_from(("", " " * margin + f"# note {next(numbers)}"))))

    def scalar(margin: int, *, flow: bool) -> list[str]:
        if not flow and draw(st.integers(0, 4)) == 0:
            text = draw(st.sampled_from(SEVERAL))
            if draw(st.booleans()) and not text.startswith(" "):
                sign = draw(st.sampled_from(("|", "|-", "|+", ">", ">-")))
                return [sign, *(" " * (margin + 3) + line if line else "" for line in text.rstrip("\n").split("\n"))]
            return [quoted(text)]
        text = draw(st.sampled_from(TEXTS))
        if text in ("plain words", "no", "2026-03-02", "4", "中文文字") and draw(st.booleans()):
            return [text]
        return [draw(st.sampled_from((quoted(text), "'" + text.replace("'", "''") + "'")))]

    def flow(depth: int) -> str:
        shape = draw(st.integers(0, 2 if depth else 0))
        if shape == 0:
            return scalar(0, flow=True)[0]
        inner = [flow(depth - 1) for _ in range(draw(st.integers(0, 3)))]
        if shape == 1:
            return "[" + ", ".join(inner) + "]"
        return "{" + ", ".join(f"k{number}: {value}" for number, value in enumerate(inner)) + "}"

    def value(margin: int, depth: int, keys: tuple[str, ...]) -> list[str]:
        """What stands behind a key: what goes on its line, then lines below."""
        how = draw(st.integers(0, 5 if depth else 2))
        if how < 2:
            return scalar(margin, flow=False)
        if how == 2:
            broken = flow(2)
            if draw(st.booleans()) and broken.endswith("}") and broken != "{}":
                return [f"{{  # note {next(numbers)}", " " * (margin + 4) + broken[1:]]
            return [broken]
        inside: list[str] = []
        nonlocal lines
        outer, lines = lines, inside
        if how == 3:
            for _ in range(draw(st.integers(1, 3))):
                note(margin + 1)
                put(" " * (margin + 1) + "-", value(margin + 1, depth - 1, ()))
        else:
            mapping(margin + 1 + draw(st.integers(0, 3)), depth - 1, keys)
        lines = outer
        return ["", *inside]

    def put(head: str, made: list[str]) -> None:
        beside = ""
        single = len(made) == 1 or made[0] in ("",)
        if single and draw(st.integers(0, 4)) == 0:
            beside = f"  # note {next(numbers)}"
        lines.append(f"{head} {made[0]}".rstrip() + beside)
        lines.extend(made[1:])

    def mapping(margin: int, depth: int, known: tuple[str, ...]) -> None:
        chosen = draw(
            st.lists(st.sampled_from(known or ("a", "b", "c", "x1", "y y")), unique=True, min_size=1, max_size=5)
        )
        for key in chosen:
            note(margin)
            put(" " * margin + key + ":", value(margin, depth, BELOW.get(key, ())))
            if draw(st.integers(0, 6)) == 0:
                lines.append(" " * margin + f"# note {next(numbers)}")
                lines.append("")

    note(0)
    mapping(0, 3, SECTIONS)
    note(0)
    end = draw(st.sampled_from(("\n", "\r\n")))
    return end.join(["format: 2", *lines]) + end


SECTIONS = ("vehicle", "parts", "openings", "evidence", "demo", "preps", "connectors", "strange")
_PART = ("name", "release", "held_by", "after", "how", "tethers", "takes", "source", "when")
BELOW = {
    "vehicle": ("make", "model", "built", "drive_side", "bodies", "also_called"),
    "parts": ("trim", "dash", "radio"),
    "dash": ("parts", "source", "each", "after"),
    "trim": _PART,
    "radio": _PART,
    "openings": ("dash", "door"),
    "door": ("kind", "behind", "name", "depth", "source"),
    "held_by": ("screw", "clip", "count", "at", "length"),
    "evidence": ("e1", "e2"),
    "e1": ("by", "on", "how", "note", "with"),
}
