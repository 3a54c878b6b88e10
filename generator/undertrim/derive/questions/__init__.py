"""What a car's record still wants to know: each question with why it matters, how it is found out, and what an answer looks like."""

from undertrim.derive.questions.asking import questions
from undertrim.derive.questions.question import AnswerForm, Field, Question, Sort

__all__ = ["AnswerForm", "Field", "Question", "Sort", "questions"]
