// Keeps what is done of this plan, by the keys of the boxes: one key may be of several
// boxes. Lights the row to do now in each section and its place in the drawing, and writes
// the command that reports the cuts.
(function () {
  "use strict";
  var root = document.documentElement;
  var store = "sawbill ticks " + root.getAttribute("data-plan");
  var done = new Set();
  try { done = new Set((localStorage.getItem(store) || "").split(" ").filter(Boolean)); } catch (e) { /* nothing is kept */ }
  function keep() {
    try { localStorage.setItem(store, Array.from(done).join(" ")); } catch (e) { /* they last as long as the page */ }
  }
  function all(selector, within) { return Array.prototype.slice.call((within || document).querySelectorAll(selector)); }
  function keysOf(element) { return element.getAttribute("data-keys").split(" "); }
  function isDone(key) { return done.has(key); }
  var boxes = all("input.tick");
  var shapes = all("path[data-keys]");

  // A command's "--cut 2/1:3-7" is made of the keys "2/1:3" to "2/1:7".
  function parted(keys) {
    var pieces = new Map();
    keys.forEach(function (key) {
      var found = /^(\d+\/\d+):(\d+)$/.exec(key);
      if (!found) { return; }
      if (!pieces.has(found[1])) { pieces.set(found[1], []); }
      pieces.get(found[1]).push(Number(found[2]));
    });
    return pieces;
  }
  var known = new Set();
  boxes.forEach(function (box) { keysOf(box).forEach(function (key) { known.add(key); }); });
  var whole = parted(known);
  function command() {
    var said = "";
    parted(Array.from(done).filter(function (key) { return known.has(key); })).forEach(function (cuts, piece) {
      if (cuts.length === whole.get(piece).length) { said += " --cut " + piece; return; }
      cuts.sort(function (a, b) { return a - b; });
      var from = cuts[0];
      cuts.forEach(function (cut, i) {
        if (cuts[i + 1] === cut + 1) { return; }
        said += " --cut " + piece + ":" + (from === cut ? cut : from + "-" + cut);
        from = cuts[i + 1];
      });
    });
    return said;
  }

  var report = root.getAttribute("data-report");
  var line = null;
  function refresh() {
    boxes.forEach(function (box) {
      var keys = keysOf(box);
      box.checked = keys.every(isDone);
      box.indeterminate = box.checked ? false : keys.some(isDone);
    });
    var now = new Set();
    all("section").forEach(function (section) {
      var first = true;
      all("table.work tbody tr", section).forEach(function (row) {
        var own = all("input.tick", row);
        if (own.length === 0) { return; }
        var next = own.find(function (box) { return !box.checked; });
        row.classList.toggle("past", !next);
        row.classList.toggle("now", next ? first : false);
        if (next ? first : false) { row.setAttribute("aria-current", "step"); } else { row.removeAttribute("aria-current"); }
        if (!next) { next = own[own.length - 1]; }
        else if (first) {
          first = false;
          if (section.querySelector(".stays")) { keysOf(next).forEach(function (key) { now.add(key); }); }
        }
        all("label", row).forEach(function (label) { label.htmlFor = next.id; });
      });
    });
    shapes.forEach(function (shape) {
      var keys = keysOf(shape);
      shape.classList.toggle("now", keys.some(function (key) { return now.has(key); }));
      shape.classList.toggle("past", keys.every(isDone));
    });
    all("nav a").forEach(function (link) {
      var section = document.getElementById(link.getAttribute("href").slice(1));
      var own = all("input.tick", section);
      link.classList.toggle("done", own.length === 0 ? false : own.every(function (box) { return box.checked; }));
    });
    if (line) { line.value = report + command(); }
  }

  function button(said, does) {
    var b = document.createElement("button");
    b.type = "button";
    b.textContent = said;
    b.addEventListener("click", does);
    return b;
  }
  if (boxes.length > 0) {
    var tools = document.createElement("div");
    tools.className = "tools";
    if (report) {
      line = document.createElement("textarea");
      line.readOnly = true;
      line.rows = 2;
      line.id = "report";
      var name = document.createElement("label");
      name.htmlFor = "report";
      name.textContent = "To report the cuts that are ticked, run where the plan's folder lies:";
      var copied = document.createElement("span");
      copied.setAttribute("role", "status");
      tools.appendChild(name);
      tools.appendChild(line);
      tools.appendChild(button("Copy this line", function () {
        function say(well) { copied.textContent = well ? "copied" : "select the line and copy it"; }
        line.select();
        var old = false;
        try { old = document.execCommand("copy"); } catch (e) { /* the other way, then */ }
        if (old || !navigator.clipboard) { say(old); return; }
        navigator.clipboard.writeText(line.value).then(function () { say(true); }, function () { say(false); });
      }));
      tools.appendChild(copied);
    }
    tools.appendChild(button("Clear all ticks", function () {
      if (!confirm("Clear the ticks of the whole plan?")) { return; }
      done.clear();
      keep();
      refresh();
    }));
    document.querySelector("nav").appendChild(tools);
  }
  document.addEventListener("change", function (event) {
    if (!event.target.classList.contains("tick")) { return; }
    keysOf(event.target).forEach(function (key) { if (event.target.checked) { done.add(key); } else { done.delete(key); } });
    keep();
    refresh();
  });
  refresh();
})();
