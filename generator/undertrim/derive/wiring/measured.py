"""What a meter shows, as a value that says itself."""

from dataclasses import dataclass

from undertrim.words import Language


@dataclass(frozen=True, slots=True)
class Measured:
    """A value in V or ohm: it says itself with at most four figures, `11.4 V`, `4.7 kohm`, `1 Mohm`. meter-words.js writes the same."""

    value: float
    unit: str

    def say(self, speech: Language, /) -> str:
        """The value with its unit."""
        for size, prefix in ((1e6, "M"), (1e3, "k")):
            if self.unit == "ohm" and abs(self.value) >= size:
                return f"{_figures(self.value / size, speech)} {prefix}{self.unit}"
        return f"{_figures(self.value, speech)} {self.unit}"


def _figures(value: float, speech: Language) -> str:
    figures = f"{value:.2f}".rstrip("0").rstrip(".").replace("-", "−")
    return figures.replace(".", speech.decimal_mark)
