"use strict";
const kept = sessionStorage.getItem("layer");
for (const choice of document.querySelectorAll('input[name="layer"]')) {
  if (choice.value === kept) { choice.checked = true; document.body.dataset.layer = kept; }
  choice.addEventListener("change", () => sessionStorage.setItem("layer", choice.value));
}
const box = document.createElement("div");
box.className = "broken"; box.setAttribute("role", "status"); box.hidden = true;
document.body.append(box);
let first = true;
new EventSource("changes").onmessage = (event) => {
  const told = JSON.parse(event.data);
  box.hidden = told.trouble.length === 0;
  box.textContent = ["The plan cannot be read whole; this is the last good page.", ...told.trouble].join("\n");
  if (!first && told.trouble.length === 0) { location.reload(); }
  first = false;
};
