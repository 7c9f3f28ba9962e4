"use strict";
for (const choice of document.querySelectorAll('input[name="layer"]')) {
  choice.addEventListener("change", () => { document.body.dataset.layer = choice.value; });
  if (choice.checked) { document.body.dataset.layer = choice.value; }
}
window.addEventListener("beforeprint", () => {
  for (const part of document.querySelectorAll("#findings details, #water details, #upkeep details")) { part.open = true; }
});
