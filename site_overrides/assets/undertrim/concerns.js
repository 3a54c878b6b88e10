/* Which facts concern a visit: its jobs, and the car as far as it was said. */

export function matches(clauses, car) {
  return Object.keys(clauses || {}).every((name) => !(name in car) || clauses[name].indexOf(car[name]) >= 0);
}

export function agrees(kind, car) {
  return Object.keys(kind).every((name) => !(name in car) || kind[name] === car[name]);
}

/**
 * What says of an element which visits it concerns, read once.
 * @param {HTMLElement} item
 */
export function condition(item) {
  const openings = item.dataset.openings ? item.dataset.openings.split(" ") : [];
  const clauses = JSON.parse(item.dataset.clauses || "{}"), cars = JSON.parse(item.dataset.cars || "[{}]");
  return (jobs, car) => (!jobs.length || !openings.length || jobs.some((job) => openings.indexOf(job.split("@")[0]) >= 0 || openings.indexOf(job) >= 0)) &&
    matches(clauses, car) && cars.some((kind) => agrees(kind, car));
}
