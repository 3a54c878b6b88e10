/* Which steps and facts concern a visit: its jobs, and the car as far as it was said. */

export function matches(clauses, car) {
  return Object.keys(clauses || {}).every((name) => !(name in car) || clauses[name].indexOf(car[name]) >= 0);
}

export function agrees(kind, car) {
  return Object.keys(kind).every((name) => !(name in car) || kind[name] === car[name]);
}

export function concerns(item, jobs, car) {
  const openings = item.dataset.openings ? item.dataset.openings.split(" ") : [];
  const mine = !jobs.length || !openings.length || jobs.some((job) => openings.indexOf(job.split("@")[0]) >= 0);
  return mine && matches(JSON.parse(item.dataset.clauses || "{}"), car);
}

/* The steps of a visit to one car: listed by themselves where they differ, else those of its openings in the one order. */
function visit(plan, jobs) {
  const own = plan.sets[jobs.join("+")];
  if (own) return own;
  const wanted = {};
  jobs.forEach((job) => { (plan.singles[job] || []).forEach((step) => { wanted[step] = true; }); });
  return Object.keys(wanted).map(Number).sort((a, b) => a - b);
}

export function selection(every, jobs, car) {
  const plans = every.filter((plan) => agrees(plan.car, car));
  if (plans.length === 1 && jobs.length) return visit(plans[0], jobs);
  const all = jobs.length ? jobs : Object.keys(every[0].singles);
  const wanted = {};
  plans.forEach((plan) => {
    (jobs.length ? visit(plan, all) : all.map((job) => plan.singles[job] || []).flat())
      .forEach((step) => { wanted[step] = true; });
  });
  return Object.keys(wanted).map(Number).sort((a, b) => a - b);
}
