/* Data for scripts comes with each thing once (publish/packing.py): here it becomes whole. */

const LIST = -1, NUMBERS = -2, NUMBER = -3, RUNS = -4;

function* runs(ends) {
  for (let place = 0; place < ends.length; place += 2) for (let number = ends[place]; number <= ends[place + 1]; number += 1) yield number;
}

/**
 * What was packed. Each object is one by itself, also where it was sent once.
 * @param {any} packed shapes, table, and the whole
 * @returns {any}
 */
export function unpacked([shapes, table, root]) {
  const whole = (one) => {
    if (typeof one === "number") return whole(table[one]);
    if (!Array.isArray(one)) return one;
    const [sort, ...rest] = one;
    if (sort === NUMBER) return rest[0];
    if (sort === NUMBERS) return rest;
    if (sort === RUNS) return [...runs(rest)];
    return sort === LIST ? rest.map(whole) : Object.fromEntries(shapes[sort].map((key, place) => [key, whole(rest[place])]));
  };
  return whole(root);
}
