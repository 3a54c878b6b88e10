"""What a figure should be at most, as the design wants it. The bench prints it beside what it measured, and judges nothing."""

BUDGETS: dict[str, float] = {
    "check it with all rules, cpu ms": 30,
    "its pages and data, cpu ms": 25,
    "all that is printed of it, cpu ms": 120,
    "all its files, bytes": 600_000,
    "preview after one change, s": 2,
    "build after one change, s": 3,
    "home to a found vehicle, bytes sent": 150_000,
}
