/* What is chosen on a vehicle's page: the jobs, and the car as far as it was said. */

import { all, fields } from "./elements.js";

export const page = document.querySelector(".ut-vehicle");

export function chosenJobs() {
  return fields("input[name=job]:checked", page).map((box) => box.value);
}

export function chosenCar() {
  const car = {};
  all(".ut-variant", page).forEach((set) => {
    const [box] = fields("input:checked", set);
    if (box) car[set.dataset.variant] = box.value;
  });
  return car;
}
