/* Which steps a visit has, by the lists of the planner. */

import { agrees } from "./concerns.js";

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
