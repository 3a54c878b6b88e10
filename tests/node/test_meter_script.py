"""The meter guide of a page answers as the program does."""

import json
from collections import Counter

from in_node import Run
from undertrim.publish.facts import meter
from vectors.meter import cases

MODULES = [f"meter-{name}" for name in ("readings", "functions", "suspects", "words")]
ANSWER = """({ table, asks }) => {
  const m = { ...meter_readings, ...meter_functions, ...meter_suspects, ...meter_words };
  const end = value => value === Infinity ? "open" : value;
  const band = b => b && [b.id, b.words, b.low, end(b.high)];
  const candidate = c => [c.function, c.pattern, c.standing, c.findings.map(f => [f.verdict, band(f.band), f.sure, f.why])];
  const all = ask => ask.texts.map(text => m.read(table, text));
  const doers = {
    read: ask => { try { const r = m.read(table, ask.text); return { ...r, value: end(r.value) }; }
      catch (error) { return { id: error.id, message: error.message, hint: error.hint }; } },
    weigh: ask => m.weigh(table, all(ask)).map(candidate),
    consider: ask => candidate(m.consider(table, ask.function, all(ask), ask.behaves, ask.supply)),
    next: ask => { const n = m.next(table, all(ask), ask.function);
      return n && { kind: n.kind, state: n.state, outcomes: n.outcomes.map(o => [band(o.band), o.functions]) }; },
    suspicions: ask => { const readings = all(ask);
      const recorded = ask.function ? m.consider(table, ask.function, readings, ask.behaves, ask.supply) : null;
      return m.suspicions(table, readings, recorded).map(s => [s.id, s.stop, s.readings]); },
    place: ask => { const f = m.place(ask.rungs, ask.ohms === "open" ? Infinity : ask.ohms);
      return [f.kind, f.rungs.map(r => r.name), f.below && f.below.name, f.above && f.above.name]; },
    measured: ask => [m.measured(ask.value, "V"), m.measured(ask.value, "ohm")],
  };
  return asks.map(ask => doers[ask.do](ask));
}"""


def test_the_guide_answers_as_the_program_does(run: Run) -> None:
    made = cases()
    answers = run(ANSWER, {"table": meter.meter_table(), "asks": [case.ask for case in made]}, *MODULES)
    assert Counter(case.ask["do"] for case in made).keys() == {
        "read", "weigh", "consider", "next", "suspicions", "place", "measured"
    }  # fmt: skip
    wrong = [
        (case, answer)
        for case, answer in zip(made, answers, strict=True)
        if answer != json.loads(json.dumps(case.answer))
    ]
    assert not wrong, wrong[0]
