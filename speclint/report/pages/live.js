"use strict";
const shown = PAGE_NUMBER;
const kept = sessionStorage.getItem("layer");
for (const choice of document.querySelectorAll('input[name="layer"]')) {
  if (choice.value === kept) { choice.checked = true; document.body.dataset.layer = kept; }
  choice.addEventListener("change", () => sessionStorage.setItem("layer", choice.value));
}
const box = document.createElement("div");
box.className = "broken"; box.setAttribute("role", "status"); box.hidden = true;
document.body.append(box);
function said(whole) {
  if (shown === 0) { return "there is no page yet."; }
  return whole ? "this is the last good page." : "this page shows what could be read.";
}
new EventSource("changes").onmessage = (event) => {
  const told = JSON.parse(event.data);
  if (told.page !== shown) { location.reload(); return; }
  box.hidden = told.trouble.length === 0;
  box.textContent = [`The plan cannot be read whole; ${said(told.whole)}`, ...told.trouble].join("\n");
};
