// Keeps the ticks of this plan, and marks in the contents what is all done.
(function () {
  "use strict";
  var key = "sawbill plan " + document.documentElement.getAttribute("data-plan");
  var boxes = Array.prototype.slice.call(document.querySelectorAll("input.tick"));
  function kept() {
    try { return (localStorage.getItem(key) || "").split(" "); } catch (e) { return []; }
  }
  function keep() {
    var ticked = boxes.filter(function (b) { return b.checked; }).map(function (b) { return b.id; });
    try { localStorage.setItem(key, ticked.join(" ")); } catch (e) { /* they last as long as the page */ }
  }
  function mark() {
    Array.prototype.forEach.call(document.querySelectorAll("nav a"), function (link) {
      var section = document.getElementById(link.getAttribute("href").slice(1));
      var all = section.querySelectorAll("input.tick").length;
      var ticked = section.querySelectorAll("input.tick:checked").length;
      link.classList.toggle("done", all > 0 ? ticked === all : false);
    });
  }
  if (boxes.length > 0) {
    var clear = document.createElement("button");
    clear.textContent = "Clear all ticks";
    clear.addEventListener("click", function () {
      if (!confirm("Clear the ticks of the whole plan?")) { return; }
      boxes.forEach(function (b) { b.checked = false; });
      keep();
      mark();
    });
    document.querySelector("nav").appendChild(clear);
  }
  var before = kept();
  boxes.forEach(function (b) { if (before.indexOf(b.id) >= 0) { b.checked = true; } });
  document.addEventListener("change", function () { keep(); mark(); });
  mark();
})();
