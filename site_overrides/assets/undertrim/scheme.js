/* Light or dark: what the reader chose, else what the device wants. It stands where the switch is, ahead of all that is shown. */

const KEY = "undertrim:scheme";
const form = document.getElementById("ut-schemes");
/** @type {HTMLInputElement[]} */
const inputs = Array.from(form ? form.querySelectorAll("input") : []);

function kept() { try { return localStorage.getItem(KEY); } catch (error) { return null; } }
function keep(scheme) { try { localStorage.setItem(KEY, scheme); } catch (error) { /* then it lasts as long as the page */ } }

/* Shows the colours of one of the switches, and the label that leads to the next. */
function show(chosen) {
  document.body.setAttribute("data-md-color-scheme", chosen.value);
  inputs.forEach((one) => { /** @type {HTMLElement} */ (one.nextElementSibling).hidden = one !== chosen; });
}

inputs.forEach((one) => {
  const wanted = matchMedia(one.dataset.media);
  one.addEventListener("change", () => {
    show(one);
    keep(one.value);
    /** @type {HTMLElement} */ (one.nextElementSibling).focus();
  });
  wanted.addEventListener("change", () => { if (wanted.matches && !kept()) show(one); });
});
if (inputs.length) show(inputs.find((one) => one.value === kept()) || inputs.find((one) => matchMedia(one.dataset.media).matches) || inputs[0]);
