// Arrow keys walk the lineage: back to the parent, on to the child, up and down among siblings. F centres on a node, B and A fold what it
// came from and what was made of it. Without script, Tab reaches every node and the form below the drawing does the rest.
const steps = { ArrowLeft: "parent", ArrowRight: "child", ArrowUp: "before", ArrowDown: "after" };
const deeds = { f: "centre", b: "before", a: "after" };

document.addEventListener("keydown", event => {
  const node = event.target.closest?.("[data-lineage] .node");
  if (!node || event.ctrlKey || event.metaKey) return;
  if (steps[event.key]) walk(event, node, node.dataset[steps[event.key]]);
  else if (deeds[event.key.toLowerCase()] && node.dataset.at) ask(event, node, deeds[event.key.toLowerCase()]);
});

function walk(event, node, key) {
  const next = key && node.closest("[data-lineage]").querySelector(`[data-key="${CSS.escape(key)}"]`);
  if (!next) return;
  event.preventDefault();
  next.focus();
}

function ask(event, node, deed) {
  const form = node.closest("section")?.querySelector("[data-lineage-tools]");
  if (!form) return;
  event.preventDefault();
  form.elements.at.value = node.dataset.at;
  form.requestSubmit(form.querySelector(`[value="${deed}"]`));
}

// The node centred on comes into sight, in the drawing that is shown.
function centre() {
  for (const node of document.querySelectorAll("[data-lineage] .centre")) {
    if (node.checkVisibility()) node.scrollIntoView({ block: "center", inline: "center" });
  }
}

centre();
globalThis.Blazor?.addEventListener("enhancedload", centre);
