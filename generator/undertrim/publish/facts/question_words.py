"""What the answer to a question looks like, in words."""

from undertrim.derive.questions import AnswerForm, Question
from undertrim.words import Items, Value, message


def form_words(form: AnswerForm) -> Value:
    """What an answer looks like: `a value in mm or in, usually 20 mm to 500 mm; or none`."""
    said: Value
    if form.sort == "quantity":
        code = "questions/form-quantity" if form.least else "questions/form-in"
        said = message(code, units=Items(form.units, "or"), least=form.least, most=form.most)
    elif form.choices:
        said = message(
            f"questions/form-{form.sort}", words=Items(form.choices, "or" if form.sort == "choice" else "comma")
        )
    else:
        said = message(f"questions/form-{form.sort}")
    return message("questions/or-none", form=said) if form.none else said


def cars_words(question: Question) -> Value:
    """The cars that it is about, as a condition is typed."""
    clauses = (
        message("evidence/choice", variant=name, choice=Items(tuple([said] if isinstance(said, str) else said), "or"))
        for name, said in question.cars.items()
    )
    return Items(tuple(clauses), "comma")
