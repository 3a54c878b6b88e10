/* A small side view for each shape of a body, of our own drawing: no vehicle's. Wheels stand at the same height in all of them. */

const NS = "http://www.w3.org/2000/svg";
const WHEELS = [[17, 27], [55, 27]];
/** @type {Record<string, { body: string, glass: string, wheels?: number[][] }>} */
const SHAPES = {
  "hatchback": { body: "M4 26V19l8-3 9-8h24l12 9 8 3v6z", glass: "M15 16l7-6h10v6zM35 10h9l7 6H35z" },
  "saloon": { body: "M3 26v-7l11-3 9-8h18l9 8 17 3v7z", glass: "M18 16l6-6h8v6zM35 10h5l6 6H35z" },
  "estate": { body: "M3 26v-7l11-3 9-8h37l7 11v7z", glass: "M18 16l6-6h9v6zM36 10h10v6H36zM49 10h9l3 6H49z" },
  "coupe": { body: "M3 26v-6l12-3 10-8h12l20 8 9 3v6z", glass: "M20 16l7-5h7l8 5z" },
  "convertible": { body: "M3 26v-7l12-2 8-7h3l-3 7h34l10 3v6z", glass: "M18 16l5-4 1 4z" },
  "pick-up": { body: "M3 26v-8l11-2 7-9h16v9h30v10z", glass: "M17 16l5-7h5v7zM29 9h5v7h-5z" },
  "van": { body: "M3 26v-9l9-4 7-9h48v22z", glass: "M14 13l6-7h7v7z" },
  "minibus": { body: "M3 26v-9l8-5 6-8h50v22z", glass: "M13 12l5-6h8v6zM29 6h11v6H29zM43 6h11v6H43zM57 6h8v6h-8z" },
  "off-road": { body: "M4 25V15l12-2 5-8h40l4 9v11z", glass: "M20 13l4-6h10v6zM37 7h10v6H37zM50 7h9l2 6H50z", wheels: [[17, 26], [54, 26]] }
};

function shape(name, given) {
  const made = document.createElementNS(NS, name);
  Object.entries(given).forEach(([key, value]) => { made.setAttribute(key, String(value)); });
  return made;
}

/**
 * The picture of a body; of a plain car where nobody recorded which.
 * @param {string | undefined} body
 */
export function silhouette(body) {
  const { body: outline, glass, wheels = WHEELS } = SHAPES[body] || SHAPES.hatchback;
  const made = shape("svg", { "class": "ut-silhouette", viewBox: "0 0 70 34", "aria-hidden": "true", focusable: "false" });
  made.append(shape("path", { d: outline, "class": "ut-sheet" }), shape("path", { d: glass, "class": "ut-glass" }),
    ...wheels.map(([cx, cy]) => shape("circle", { cx, cy, r: 6, "class": "ut-wheel" })));
  return made;
}
