"""How a value is printed: with its symbol, in the other system of units, in hours, minutes and seconds."""

from fractions import Fraction

from undertrim.record.unit_table import Kind, Unit

_CLOCK = ((3600, "h"), (60, "min"), (1, "s"))
_DAYS = 2 * 86400  # from here on a time stays as typed


def with_symbol(number: str, unit: Unit) -> str:
    """ "62 mm", "5°", and a count's bare number."""
    return number + unit.symbol if unit.symbol in ("", "°") else f"{number} {unit.symbol}"


def with_name(number: str, unit: Unit) -> str:
    """The same in the letters a keyboard has, where the unit has them: "10 N.m"."""
    return f"{number} {unit.symbol if '°' in unit.symbol else unit.name}"


def other_system(value: float, unit: Unit, kind: Kind, mark: str = ".") -> str:
    """A canonical value rounded in the unit people of the other system use, with a decimal mark; "" if there is no other."""
    for other in kind.others:
        if other.source == unit.system and abs(value) < other.below:
            target = kind.units[other.unit]
            number = (Fraction(repr(value)) - target.offset) / target.factor
            return with_symbol(rounded(number, other.decimals).replace(".", mark), target)
    return ""


def rounded(number: Fraction, decimals: int) -> str:
    """Half up to so many decimals, no trailing zeros; a small number keeps two digits and is never 0."""
    while number and abs(number) * 10**decimals < 1:
        decimals += 1 if abs(number) * 10 ** (decimals + 1) < 1 else 2
    digits = str(int(abs(number) * 10**decimals + Fraction(1, 2))).rjust(decimals + 1, "0")
    cut = len(digits) - decimals
    shown = f"{digits[:cut]}.{digits[cut:]}".rstrip("0").rstrip(".")
    return "-" + shown if number < 0 else shown


def clock(seconds: float) -> str:
    """A whole number of seconds below two days, as "1 h 30 min" or "1 min 30 s"; "" for anything else."""
    if not seconds.is_integer() or seconds >= _DAYS:
        return ""
    left, words = int(seconds), []
    for size, symbol in _CLOCK:
        count, left = divmod(left, size)
        if count:
            words.append(f"{count} {symbol}")
    return " ".join(words) or "0 s"
