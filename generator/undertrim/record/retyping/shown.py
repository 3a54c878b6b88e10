"""A line as a message shows it: whole, or the stretch that changed."""

LONGEST = 160
_AROUND = 40


def shown(before: str, after: str) -> str:
    """The changed line without its indent; of a long one what is around the change."""
    text = after.strip()
    if len(text) <= LONGEST:
        return text
    first, same = first_change(before, after), first_change(before[::-1], after[::-1])
    start, end = max(first - _AROUND, 0), min(max(len(after) - same, first) + _AROUND, len(after))
    start = after.rfind(" ", 0, start) + 1  # whole words
    cut = after[start:end].strip()
    cut = cut if len(cut) <= LONGEST else f"{cut[: LONGEST // 2]} … {cut[-LONGEST // 2 :]}"
    return f"{'… ' if start else ''}{cut}{' …' if end < len(after) else ''}"


def first_change(before: str, after: str) -> int:
    """The first column, from 0, at which two lines differ."""
    differ = (at for at, (a, b) in enumerate(zip(before, after, strict=False)) if a != b)
    return next(differ, min(len(before), len(after)))
