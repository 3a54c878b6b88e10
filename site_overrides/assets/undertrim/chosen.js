/* What is chosen on a vehicle's page: the jobs, and the car as far as it was said. */

export const page = document.querySelector(".ut-vehicle");

export function chosenJobs() {
  return Array.from(page.querySelectorAll("input[name=job]:checked")).map((box) => box.value);
}

export function chosenCar() {
  const car = {};
  page.querySelectorAll(".ut-variant").forEach((set) => {
    const box = set.querySelector("input:checked");
    if (box) car[set.dataset.variant] = box.value;
  });
  return car;
}
