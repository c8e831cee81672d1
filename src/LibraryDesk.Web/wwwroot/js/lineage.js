// Arrow keys walk the lineage: back to the parent, on to the child, up and down among siblings. Without script, Tab reaches every node.
const steps = { ArrowLeft: "parent", ArrowRight: "child", ArrowUp: "before", ArrowDown: "after" };

document.addEventListener("keydown", event => {
  const step = steps[event.key];
  const node = step && event.target.closest?.("[data-lineage] .node");
  const key = node && node.dataset[step];
  if (!key) return;
  const next = node.closest("[data-lineage]").querySelector(`[data-key="${CSS.escape(key)}"]`);
  if (!next) return;
  event.preventDefault();
  next.focus();
});
