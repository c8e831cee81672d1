// What was typed into a longer form stays in this tab until the form is sent: leaving it by a link or by Back loses nothing.
const keyOf = form => `desk-draft:${form.dataset.draft}`;
const written = form => [...new FormData(form).entries()].filter(([name, value]) => typeof value === "string" && !name.startsWith("_"));

const keep = form => {
  try {
    sessionStorage.setItem(keyOf(form), JSON.stringify(written(form)));
  } catch {
    // No room or a private window: then it is as without this file.
  }
};

const putBack = form => {
  // A refused form holds what was sent.
  if (document.querySelector("[data-takes-focus]")) return keep(form);
  const kept = JSON.parse(sessionStorage.getItem(keyOf(form)) ?? "null");
  if (!kept) return;
  for (const input of form.querySelectorAll("input[type=checkbox], input[type=radio]")) input.checked = kept.some(([name, value]) => name === input.name && value === input.value);
  for (const input of form.querySelectorAll("input[type=text], textarea, select")) input.value = kept.find(([name]) => name === input.name)?.[1] ?? input.value;
  form.querySelector("[data-draft-word]").hidden = false;
};

for (const change of ["input", "change"]) {
  document.addEventListener(change, event => {
    const form = event.target.closest("form[data-draft]");
    if (form) keep(form);
  });
}

document.addEventListener("submit", event => {
  if (event.target.matches("form[data-draft]") && navigator.onLine) sessionStorage.removeItem(keyOf(event.target));
});

const settle = () => document.querySelectorAll("form[data-draft]").forEach(putBack);
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
