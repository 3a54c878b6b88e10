/* On every page: what was closed stays closed in print, and what scrolls sideways can be reached with the keyboard. */
(function () {
  "use strict";

  /* The theme opens every details element for print. Those that the reader left closed are marked, and the style hides what is in them. */
  var printing = false;
  var paper = window.matchMedia("print");

  function note(item) {
    if (!printing && !paper.matches) item.classList.toggle("ut-shut", !item.open);
  }

  function noteAll() { document.querySelectorAll("details").forEach(note); }

  window.addEventListener("beforeprint", function () { printing = true; });
  window.addEventListener("afterprint", function () { printing = false; });
  document.addEventListener("toggle", function (event) { if (event.target.matches("details")) note(event.target); }, true);

  var INSIDE = "a[href], button, input, select, textarea, summary, [tabindex]";

  var reached = 0; // two regions of a page may not have one name

  /* The theme puts a landmark into every piece of code, all of one name. */
  function plain() { document.querySelectorAll("pre nav").forEach(function (item) { item.setAttribute("role", "none"); }); }

  function reach() {
    plain();
    document.querySelectorAll("article .ut-scroll, article .ut-face, article .md-typeset__scrollwrap, article pre > code").forEach(function (box) {
      var wide = box.scrollWidth > box.clientWidth && !box.querySelector(INSIDE);
      if (!wide || box.hasAttribute("tabindex")) return;
      box.tabIndex = 0;
      box.setAttribute("role", "region");
      var table = box.querySelector("caption, th");
      reached += 1;
      box.setAttribute("aria-label", "Scrolls sideways, " + reached + ": " + (table ? table.textContent.trim() : "text"));
    });
  }

  noteAll();
  window.addEventListener("load", function () { noteAll(); reach(); });
  window.addEventListener("resize", reach);
  document.addEventListener("toggle", reach, true);
})();
