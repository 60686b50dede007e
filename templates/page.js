// What the maker chooses and ticks, kept on her device. No figure is worked out here.
(function () {
  "use strict";
  var root = document.documentElement;
  var about = root.dataset;
  var form = document.querySelector(".choose");
  var all = function (what, within) { return Array.prototype.slice.call((within || document).querySelectorAll(what)); };

  // Kept under the booklet's name; a device that keeps nothing still shows everything.
  var place = "notchbook:" + about.booklet;
  var kept = { ticks: {} };
  try { kept = JSON.parse(localStorage.getItem(place)) || kept; } catch (e) { /* nothing is kept */ }
  if (!kept.ticks || typeof kept.ticks !== "object") { kept.ticks = {}; }
  function keep() { try { localStorage.setItem(place, JSON.stringify(kept)); } catch (e) { /* nothing is kept */ } }

  // Ticks without a name of their own are told apart by their section and their order in it.
  var ticks = all("main input[type=checkbox]");
  all("main section").forEach(function (section) {
    all("[data-for], section > div", section).concat([section]).forEach(function (group) {
      all("input[type=checkbox]:not([data-key])", group).forEach(function (tick, at) {
        tick.dataset.key = section.id + ":" + (group.dataset.for || "") + ":" + at;
      });
    });
  });

  function shown(thing) { return thing.offsetParent !== null; }
  function progress() {
    var steps = all("section.step").filter(shown);
    var done = steps.filter(function (step) { return step.classList.contains("ticked"); }).length;
    var line = document.querySelector(".progress");
    line.hidden = steps.length === 0;
    line.querySelector("progress").max = Math.max(1, steps.length);
    line.querySelector("progress").value = done;
    line.querySelector("output").textContent =
      line.dataset.words.replace("{n}", done).replace("{N}", steps.length);
  }
  function paint() {
    ticks.forEach(function (tick) {
      tick.checked = Boolean(kept.ticks[tick.dataset.key]);
      var step = tick.closest(".done") && tick.closest("section.step");
      if (step) { step.classList.toggle("ticked", tick.checked); }
    });
    progress();
  }

  // What is read stays where it is on the screen while what stands above it grows or shrinks.
  function reading() {
    var below = document.querySelector(".bar").offsetHeight;
    return all("main > section").filter(shown).filter(function (section) {
      return section.getBoundingClientRect().bottom > below;
    })[0];
  }
  // A letter says of which booklet, edition, size and step it speaks.
  function letters() {
    var size = form.elements.size;
    var named = size ? size.options[size.selectedIndex].text : "";
    all("a.ask").forEach(function (link) {
      var number = all(".number", link.closest("section")).filter(shown)[0];
      var about = document.body.dataset.ask.replace("{size}", named).replace("{n}", number ? number.textContent : "…");
      link.href = link.href.split("?")[0] + "?subject=" + encodeURIComponent(about.replace(/, ,/, ","));
    });
  }
  function choose() {
    var section = reading();
    var before = section && section.getBoundingClientRect().top;
    ["size", "units"].forEach(function (name) {
      var select = form.elements[name];
      if (!select) { return; }
      root.dataset[name] = select.value;
      kept[name] = select.value;
    });
    keep();
    progress();
    letters();
    if (section && shown(section) && before < 0) { window.scrollBy(0, section.getBoundingClientRect().top - before); }
  }

  form.hidden = false;
  document.querySelector(".comfort").hidden = false;
  ["size", "units"].forEach(function (name) {
    var select = form.elements[name];
    if (!select) { return; }
    if (all("option", select).some(function (option) { return option.value === kept[name]; })) { select.value = kept[name]; }
    select.addEventListener("change", choose);
  });
  document.addEventListener("change", function (event) {
    var key = event.target.dataset && event.target.dataset.key;
    if (!key) { return; }
    if (event.target.checked) { kept.ticks[key] = true; } else { delete kept.ticks[key]; }
    keep();
    paint();
  });
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  form.addEventListener("reset", function (event) {
    event.preventDefault();
    if (!window.confirm(document.querySelector("button[data-sure]").dataset.sure)) { return; }
    kept.ticks = {};
    keep();
    paint();
  });

  // The screen stays on while the page is looked at, where the browser can do that.
  var lock = null;
  var awake = form.elements.awake;
  function hold() {
    if (!awake.checked || document.visibilityState !== "visible") { return; }
    navigator.wakeLock.request("screen").then(function (held) { lock = held; }, function () { awake.checked = false; });
  }
  if ("wakeLock" in navigator) {
    awake.closest("label").hidden = false;
    awake.addEventListener("change", function () {
      if (awake.checked) { hold(); } else if (lock) { lock.release(); lock = null; }
    });
    document.addEventListener("visibilitychange", hold);
  }

  // A picture as large as the screen; a second tap brings it closer.
  var dialog = document.querySelector("dialog");
  var large = dialog.querySelector(".large");
  document.addEventListener("click", function (event) {
    var opener = event.target.closest && event.target.closest(".enlarge");
    if (opener) {
      var small = opener.querySelector("img");
      var image = large.querySelector("img");
      image.src = small.src;
      image.alt = small.alt;
      large.classList.remove("closer");
      dialog.showModal();
    } else if (event.target.closest && event.target.closest(".large img")) {
      large.classList.toggle("closer");
    }
  });

  // A reference leads to its section, and there to its line in the size that is shown.
  document.addEventListener("click", function (event) {
    var link = event.target.closest && event.target.closest("a[data-to]");
    if (!link) { return; }
    var line = all('[data-line="' + link.dataset.to + '"]').filter(shown)[0];
    if (!line) { return; }
    event.preventDefault();
    all(".found").forEach(function (old) { old.classList.remove("found"); });
    line.classList.add("found");
    line.scrollIntoView({ block: "center" });
  });

  // Pictures that nobody has scrolled to and answers that nobody has opened are printed too.
  var opened = [];
  window.addEventListener("beforeprint", function () {
    all("img[loading]").forEach(function (image) { image.loading = "eager"; });
    opened = all("details.help:not([open])");
    opened.forEach(function (answer) { answer.open = true; });
  });
  window.addEventListener("afterprint", function () {
    opened.forEach(function (answer) { answer.open = false; });
  });

  choose();
  paint();
  if (location.hash) {
    var aim = document.getElementById(location.hash.slice(1));
    if (aim) { aim.scrollIntoView(); }
  }
})();
