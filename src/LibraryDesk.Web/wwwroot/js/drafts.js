// What was typed into a longer form stays in this tab until the form is sent: leaving it by a link or by Back loses nothing.
const sent = "desk-draft-sent";
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
  const kept = JSON.parse(sessionStorage.getItem(keyOf(form)) ?? "null");
  if (!kept) return;
  for (const input of form.querySelectorAll("input[type=checkbox], input[type=radio]")) input.checked = kept.some(([name, value]) => name === input.name && value === input.value);
  for (const input of form.querySelectorAll("input:not([type]), input[type=text], textarea, select")) {
    input.value = kept.find(([name]) => name === input.name)?.[1] ?? input.value;
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }
  const word = form.querySelector("[data-draft-word]");
  if (word) word.hidden = false;
};

for (const change of ["input", "change"]) {
  document.addEventListener(change, event => {
    const form = event.target.closest("form[data-draft]");
    if (form) keep(form);
  });
}

document.addEventListener("submit", event => {
  if (event.target.matches("form[data-draft]")) sessionStorage.setItem(sent, keyOf(event.target));
  // Whoever signs in next in this tab finds nothing of it.
  if (event.target.getAttribute("action") === "/account/sign-out") sessionStorage.clear();
});

// A sent form is forgotten once a page answers it, but not when that page refuses it, asks to sign in first or says that it was out of date.
const settle = () => {
  const key = sessionStorage.getItem(sent);
  sessionStorage.removeItem(sent);
  const refused = document.querySelector(".errsum") !== null;
  const left = refused || location.pathname.startsWith("/account/") || document.querySelector("[data-not-taken]") !== null;
  if (key && !left) sessionStorage.removeItem(key);
  for (const form of document.querySelectorAll("form[data-draft]")) {
    // A refused form holds what was sent.
    if (refused && keyOf(form) === key) keep(form);
    else putBack(form);
  }
};
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
