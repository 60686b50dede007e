// What an editor ticks and fills in stays on the device, where the device lets it.
(function () {
  "use strict";
  var kept = "notchbook proof " + document.documentElement.dataset.kept;
  var known = {};
  try { known = JSON.parse(localStorage.getItem(kept)) || {}; } catch (none) { known = {}; }
  document.querySelectorAll("[data-key]").forEach(function (field) {
    var key = field.dataset.key, box = field.type === "checkbox";
    if (known[key] !== undefined) { if (box) { field.checked = known[key] === true; } else { field.value = String(known[key]); } }
    field.addEventListener(box ? "change" : "input", function () {
      known[key] = box ? field.checked : field.value;
      try { localStorage.setItem(kept, JSON.stringify(known)); } catch (none) { /* it is not kept, and all else works */ }
    });
  });
})();
