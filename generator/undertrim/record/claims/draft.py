"""A claims file that is being written, answer by answer: what was answered is on the disk before the next question."""

import json
import os
import tempfile
from dataclasses import dataclass, field
from pathlib import Path

from undertrim.record.source import Data


@dataclass(slots=True)
class Draft:
    """What was said so far; `shared` stands at the top of the file, for all answers."""

    path: Path
    vehicle: str
    shared: dict[str, Data] = field(default_factory=dict)
    answers: list[dict[str, Data]] = field(default_factory=list)

    @property
    def answered(self) -> set[str]:
        """The addresses that have an answer."""
        return {answer["about"] for answer in self.answers}

    def said(self, about: str) -> str:
        """The value that was answered; empty where there is none."""
        return next((str(answer.get("says", "")) for answer in reversed(self.answers) if answer["about"] == about), "")

    def add(self, answer: dict[str, Data]) -> None:
        """One more answer, kept at once. Raises OSError, and then leaves the file as it was."""
        self.answers.append(answer)
        self.save()

    def save(self) -> None:
        """Write the file in one step. Raises OSError."""
        data = {"claims": 1, "vehicle": self.vehicle, **self.shared, "answers": self.answers}
        number, name = tempfile.mkstemp(prefix=f".{self.path.stem}-", suffix=".tmp", dir=self.path.parent)
        aside = Path(name)
        try:
            with os.fdopen(number, "w", encoding="utf-8", newline="\n") as file:
                json.dump(data, file, ensure_ascii=False, indent=2)
                file.write("\n")
            aside.chmod(0o644)
            aside.replace(self.path)
        except BaseException:
            aside.unlink(missing_ok=True)
            raise
