"""What axe-core finds on a page of the browser as it stands."""

from pathlib import Path

import axe_playwright_python
from playwright.sync_api import Page

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")
# Every rule but the one for contrast above what the rest of the page keeps (AAA; test_looks.py holds steps and cautions to it). What is
# of colours alone, three quarters of the time, is asked of two texts of each look: same elements, same classes, all the way up.
RUN = """async ([colours, whole]) => {
  const asked = (context, values) => axe.run(context, {resultTypes: ["violations"], runOnly: {type: "rule", values}});
  const look = item => item === document.body ? "" : look(item.parentElement) + ">" + item.tagName + "." + item.className;
  const met = {};
  for (const item of document.body.querySelectorAll("*")) {
    const lettered = [...item.childNodes].some(node => node.nodeType === Node.TEXT_NODE && node.data.trim());
    if (lettered && item.checkVisibility()) (met[look(item)] ||= []).push(item);
  }
  const include = Object.values(met).flatMap(same => same.slice(0, 2));
  const found = (await asked({include}, colours)).violations;
  const others = axe.getRules().map(rule => rule.ruleId).filter(id => !["color-contrast-enhanced", ...colours].includes(id));
  if (whole) found.push(...(await asked(document, others)).violations);
  return found.map(one => one.id + ": " + one.nodes.map(node => node.html.slice(0, 120)).slice(0, 3).join(" | "));
}"""
OF_COLOURS = ["color-contrast", "link-in-text-block"]
"""All that can differ between the schemes: nothing but colours does."""


def faults(page: Page, *, whole: bool = True) -> list[str]:
    """What axe finds on a page as it stands: all of it, or what is of colours alone."""
    # What is below the screen has no colours yet, and one scrolls what the bar lies over.
    page.evaluate(
        "document.querySelectorAll('.ut-step').forEach(step => { step.style.contentVisibility = 'visible'; })"
    )
    page.evaluate("document.querySelectorAll('.ut-go').forEach(bar => { bar.style.position = 'static'; })")
    page.evaluate(AXE)
    found: list[str] = page.evaluate(RUN, [OF_COLOURS, whole])
    return found
