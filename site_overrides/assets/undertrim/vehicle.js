/* Filters a vehicle's steps by job and car, adds up what is left, and remembers what was ticked. The lists come from the planner. */
(function () {
  "use strict";

  var holder = document.getElementById("ut-data");
  if (!holder) return;
  var data = JSON.parse(holder.textContent);
  var page = document.querySelector(".ut-vehicle");
  var stepList = document.getElementById("ut-steps");
  var shown = document.getElementById("ut-shown");
  var reset = document.getElementById("ut-reset");
  var next = document.getElementById("ut-new");
  var items = {};
  stepList.querySelectorAll("[data-step]").forEach(function (item) { items[item.dataset.step] = item; });
  var stated = {};
  Object.keys(items).forEach(function (number) {
    var line = items[number].querySelector(".ut-state");
    stated[number] = line && { line: line, words: line.textContent };
  });
  var cautions = {};
  Object.keys(items).forEach(function (number) {
    cautions[number] = Array.prototype.map.call(items[number].querySelectorAll(".ut-caution"), function (box) {
      return { words: box.textContent, danger: box.classList.contains("ut-danger"), full: box.querySelector(".ut-full"), told: box.querySelector(".ut-told") };
    });
  });
  var headings = {};
  stepList.querySelectorAll("[data-section]").forEach(function (item) { headings[item.dataset.section] = headings[item.dataset.section] || item; });
  var key = "undertrim:" + data.address;

  page.classList.add("ut-live");

  /* A plug is drawn no smaller than a finger needs; set here, since the policy of the site allows no style in the page itself. */
  page.querySelectorAll("[data-least]").forEach(function (box) {
    box.style.minWidth = box.dataset.least;
    box.style.maxWidth = box.dataset.most;
  });

  function chosenJobs() {
    return Array.prototype.map.call(page.querySelectorAll("input[name=job]:checked"), function (box) { return box.value; });
  }

  function chosenCar() {
    var car = {};
    page.querySelectorAll(".ut-variant").forEach(function (set) {
      var box = set.querySelector("input:checked");
      if (box) car[set.dataset.variant] = box.value;
    });
    return car;
  }

  function matches(clauses, car) {
    return Object.keys(clauses || {}).every(function (name) {
      return !(name in car) || clauses[name].indexOf(car[name]) >= 0;
    });
  }

  function agrees(kind, car) {
    return Object.keys(kind).every(function (name) { return !(name in car) || kind[name] === car[name]; });
  }

  function concerns(item, jobs, car) {
    var openings = item.dataset.openings ? item.dataset.openings.split(" ") : [];
    var mine = !jobs.length || !openings.length || jobs.some(function (job) { return openings.indexOf(job.split("@")[0]) >= 0; });
    return mine && matches(JSON.parse(item.dataset.clauses || "{}"), car);
  }

  /* The steps of a visit to one car: listed by themselves where they differ, else those of its openings in the one order. */
  function visit(plan, jobs) {
    var own = plan.sets[jobs.join("+")];
    if (own) return own;
    var wanted = {};
    jobs.forEach(function (job) { (plan.singles[job] || []).forEach(function (step) { wanted[step] = true; }); });
    return Object.keys(wanted).map(Number).sort(function (a, b) { return a - b; });
  }

  function selection(jobs, car) {
    var plans = data.plans.filter(function (plan) {
      return agrees(plan.car, car);
    });
    if (plans.length === 1 && jobs.length) return visit(plans[0], jobs);
    var all = jobs.length ? jobs : Object.keys(data.plans[0].singles);
    var wanted = {};
    plans.forEach(function (plan) {
      (jobs.length ? visit(plan, all) : [].concat.apply([], all.map(function (job) { return plan.singles[job] || []; })))
        .forEach(function (step) { wanted[step] = true; });
    });
    return Object.keys(wanted).map(Number).sort(function (a, b) { return a - b; });
  }

  function minutes(value) {
    var seconds = Math.floor(value * 60 + 0.5);
    var parts = [[Math.floor(seconds / 3600), "h"], [Math.floor(seconds / 60) % 60, "min"], [seconds % 60, "s"]];
    return parts.filter(function (part) { return part[0]; }).map(function (part) { return part.join(" "); }).join(" ") || "0 s";
  }

  function timeText(steps) {
    var total = 0;
    var untimed = 0;
    var waits = [];
    steps.forEach(function (step) {
      if (step.minutes !== null && step.section !== "none") total += step.minutes;
      untimed += step.untimed;
      if (step.wait) waits.push(step.wait.seconds);
    });
    var parts = [minutes(total) + " of taking apart and refitting"];
    if (untimed) parts.push(untimed + " step" + (untimed === 1 ? "" : "s") + " without a recorded time");
    var counted = {};
    waits.forEach(function (wait) {
      var words = wait === null ? "nobody has recorded" : "of " + minutes(wait / 60);
      counted[words] = (counted[words] || 0) + 1;
    });
    Object.keys(counted).forEach(function (words) { parts.push((counted[words] === 1 ? "a wait " : counted[words] + " waits ") + words); });
    return parts.join(", plus ") + "; fitting and testing not counted";
  }

  function lines(step, car) {
    return step.lines.filter(function (line) { return matches(line.clauses, car); });
  }

  function tools(steps, car) {
    var found = {};
    steps.forEach(function (step) {
      lines(step, car).forEach(function (line) { if (line.tool && line.fate !== "leave") found[line.tool] = line.either; });
      step.tools.forEach(function (tool) { found[tool] = []; });
    });
    // Where either of two tools will do, they are left out if one of them is needed anyway.
    return Object.keys(found).filter(function (tool) { return !found[tool].some(function (one) { return found[one]; }); });
  }

  var FATES = ["out", "back", "moved", "bagged", "new"];

  function tally(steps, car) {
    var sums = {};
    steps.forEach(function (step) {
      lines(step, car).forEach(function (line) {
        line.counts.forEach(function (count) {
          var sum = sums[count.sort] || (sums[count.sort] = { out: 0, back: 0, moved: 0, bagged: 0, new: 0, unrecorded: 0 });
          FATES.concat("unrecorded").forEach(function (fate) { sum[fate] += count[fate]; });
        });
      });
    });
    return sums;
  }

  function purchases(steps, car) {
    var found = [];
    steps.forEach(function (step) {
      lines(step, car).forEach(function (line) { found = found.concat(line.buy); });
      found = found.concat(step.materials);
    });
    return found;
  }

  function text(tag, value) {
    var made = document.createElement(tag);
    made.textContent = value;
    return made;
  }

  function fill(target, children) {
    target.textContent = "";
    children.forEach(function (child) { target.appendChild(child); });
  }

  function showTotals(steps, car) {
    document.getElementById("ut-time").textContent = timeText(steps);
    fill(document.getElementById("ut-tools"), tools(steps, car).map(function (tool) {
      var item = text("li", tool);
      if (data.instead[tool]) item.append(" ", text("small", "or " + data.instead[tool].join(", ")));
      return item;
    }));
    var buy = purchases(steps, car);
    fill(document.getElementById("ut-buy"), buy.length ? buy.map(function (item) {
      var line = text("li", (item.count === null ? "unknown number" : item.count) + " × " + item.what + " ");
      line.appendChild(text("small", "(" + item.part + ")"));
      return line;
    }) : [text("li", "Nothing single-use is recorded.")]);
    var sums = tally(steps, car);
    fill(document.querySelector("#ut-tally tbody"), Object.keys(sums).map(function (sort) {
      var row = document.createElement("tr");
      var head = text("th", sort);
      head.scope = "row";
      if (sums[sort].unrecorded) head.append(" ", text("small", "(+ an unknown number)"));
      row.appendChild(head);
      FATES.forEach(function (fate) { row.appendChild(text("td", sums[sort][fate])); });
      return row;
    }));
  }

  function showSteps(numbers) {
    var last = "";
    Object.keys(items).forEach(function (number) { items[number].hidden = true; });
    stepList.querySelectorAll("[data-section]").forEach(function (item) { item.remove(); });
    numbers.forEach(function (number) {
      var section = data.steps[number].section;
      if (section !== last) {
        var heading = headings[section].cloneNode(true);
        stepList.appendChild(heading);
        last = section;
      }
      items[number].hidden = false;
      stepList.appendChild(items[number]);
    });
  }

  /* Battery and ignition beside each step, over the steps of this visit: of several batteries one may be off and another on.
     With the car left open there is no one run of steps, and what holds in all of them stands there already. */
  function showStates(numbers, oneCar) {
    var batteries = {};
    Object.keys(stated).forEach(function (number) { if (stated[number]) stated[number].line.textContent = stated[number].words; });
    if (!oneCar) return;
    numbers.forEach(function (number) {
      data.steps[number].turns.forEach(function (turn) { if (turn[0] === "battery") batteries[turn[1]] = "on"; });
    });
    var now = { battery: "on", ignition: "off" };
    numbers.forEach(function (number) {
      data.steps[number].turns.forEach(function (turn) {
        if (turn[0] !== "battery") { now[turn[0]] = turn[2]; return; }
        batteries[turn[1]] = turn[2];
        var names = Object.keys(batteries);
        var off = names.filter(function (name) { return batteries[name] === "off"; }).length;
        now.battery = !off ? "on" : off === names.length ? "off" : "partly off";
      });
      if (stated[number]) stated[number].line.textContent = "battery " + now.battery + ", ignition " + now.ignition;
    });
  }

  /* A caution that the step just before has too is cut short, as in the plan and on the sheet; DANGER never is. */
  function showCautions(numbers) {
    var told = {};
    numbers.forEach(function (number, place) {
      var here = {};
      cautions[number].forEach(function (caution) {
        var first = caution.words in told ? told[caution.words] : place;
        var short = first !== place && !caution.danger;
        here[caution.words] = first;
        caution.full.hidden = short;
        caution.told.hidden = !short;
        caution.told.textContent = short ? "In full before step " + (first + 1) + "." : "";
      });
      told = here;
    });
  }

  function words(boxes, otherwise) {
    return Array.prototype.map.call(boxes, function (box) {
      return (box.closest("label").querySelector("b") || box.closest("label").lastElementChild).textContent;
    }).join("; ") || otherwise;
  }

  /* What the visit is, at the top of the printed page, where nothing can be chosen. */
  function showVisit() {
    document.getElementById("ut-visit-job").textContent = words(page.querySelectorAll("input[name=job]:checked"), "all of them");
    document.getElementById("ut-visit-car").textContent = words(page.querySelectorAll(".ut-variant input:checked"), "every kind");
  }

  function update() {
    var jobs = chosenJobs();
    var car = chosenCar();
    var numbers = selection(jobs, car);
    showSteps(numbers);
    showCautions(numbers);
    showStates(numbers, jobs.length && data.plans.filter(function (plan) { return agrees(plan.car, car); }).length === 1);
    showTotals(numbers.map(function (number) { return data.steps[number]; }), car);
    page.querySelectorAll("[data-cars]").forEach(function (item) {
      item.hidden = !JSON.parse(item.dataset.cars).some(function (kind) { return agrees(kind, car); });
    });
    page.querySelectorAll("[data-clauses], [data-openings]").forEach(function (item) { item.hidden = !concerns(item, jobs, car); });
    var open = Array.prototype.filter.call(page.querySelectorAll(".ut-variant"), function (set) { return !(set.dataset.variant in car); });
    var words = numbers.length + " steps";
    if (!jobs.length) words += " for all jobs: choose yours above";
    if (open.length) words += (jobs.length ? "" : ",") + " for every kind of car: say which one this is";
    shown.textContent = words + ".";
    showVisit();
    reset.hidden = !jobs.length && !Object.keys(car).length;
    store();
  }

  function store() {
    var ticks = Array.prototype.map.call(page.querySelectorAll("[data-tick]:checked"), function (box) { return box.dataset.tick; });
    next.hidden = !ticks.length;
    try {
      localStorage.setItem(key, JSON.stringify({ jobs: chosenJobs(), car: chosenCar(), ticks: ticks }));
    } catch (error) { /* a browser that keeps nothing still shows everything */ }
  }

  function restore() {
    var kept = {};
    try { kept = JSON.parse(localStorage.getItem(key)) || {}; } catch (error) { kept = {}; }
    var asked = new URLSearchParams(location.search);
    var jobs = asked.has("job") ? asked.get("job").split(" ").join("+").split("+") : kept.jobs || [];
    page.querySelectorAll("input[name=job]").forEach(function (box) { box.checked = jobs.indexOf(box.value) >= 0; });
    page.querySelectorAll(".ut-variant input").forEach(function (box) {
      var name = box.closest(".ut-variant").dataset.variant;
      box.checked = (asked.get(name) || (kept.car || {})[name]) === box.value;
    });
    page.querySelectorAll("[data-tick]").forEach(function (box) { box.checked = (kept.ticks || []).indexOf(box.dataset.tick) >= 0; });
  }

  page.addEventListener("change", function (event) {
    if (event.target.matches("[data-tick]")) store();
    else update();
  });
  reset.addEventListener("click", function () {
    page.querySelectorAll(".ut-choose input").forEach(function (box) { box.checked = false; });
    update();
  });
  next.addEventListener("click", function () {
    page.querySelectorAll("[data-tick]").forEach(function (box) { box.checked = false; });
    store();
  });
  window.undertrimCar = chosenCar;
  restore();
  update();
})();
