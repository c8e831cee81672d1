// What script adds to pages that work without it. No inline code anywhere: the content policy forbids it.

// The view (light, dark, bright sun) changes in place, so that nothing half typed is lost to a reload.
document.addEventListener("submit", event => {
  const form = event.target.closest("form[data-view-form]");
  if (!form) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  const view = (event.submitter ?? form.querySelector("button")).value;
  const root = document.documentElement;
  if (view === "auto") root.removeAttribute("data-theme"); else root.dataset.theme = view;
  for (const button of document.querySelectorAll("form[data-view-form] button[aria-pressed]")) {
    const on = button.dataset.view === view;
    button.setAttribute("aria-pressed", String(on));
    if (button.dataset.off) button.value = on ? button.dataset.off : button.dataset.view;
  }
  const body = new URLSearchParams({ view, returnUrl: "/" });
  fetch(form.action, { method: "POST", body, redirect: "manual" });
}, true);

// Connection lost or back.
const showConnection = () => {
  const bar = document.getElementById("offline-bar");
  if (!bar) return;
  bar.hidden = navigator.onLine;
  const words = bar.querySelector("[data-link]");
  if (bar.hidden && words.dataset.plain) words.textContent = words.dataset.plain;
};

// Without a connection a link would change the address and show nothing. Links within the page, and what is sent by other scripts, go on.
document.addEventListener("click", event => {
  const link = event.target.closest("a[href]");
  const words = document.querySelector("#offline-bar [data-link]");
  if (navigator.onLine || !link || !words || link.origin !== location.origin || (link.pathname === location.pathname && link.hash)) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  words.dataset.plain ??= words.textContent;
  words.textContent = words.dataset.link;
}, true);
addEventListener("online", showConnection);
addEventListener("offline", showConnection);

// A link to a place on the same page moves focus there. Enhanced navigation would only scroll.
document.addEventListener("click", event => {
  const link = event.target.closest("a[href*='#']");
  if (!link || link.origin !== location.origin || link.pathname !== location.pathname || link.search !== location.search) return;
  const target = document.getElementById(decodeURIComponent(link.hash.slice(1)));
  if (!target) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  history.replaceState(history.state, "", link.href);
  if (target.tabIndex < 0) target.tabIndex = -1;
  target.scrollIntoView();
  target.focus({ preventScroll: true });
}, true);

// After a refused form the summary of what to change takes focus, after a taken one the word that it was; also when only part of the page was
// replaced. Where it is a field that a scanner writes into, what it wrote before is marked.
const focusSummary = () => {
  const place = document.querySelector("[data-takes-focus]");
  if (place?.dataset.takesFocus === "once") place.removeAttribute("data-takes-focus");
  place?.focus({ preventScroll: place.dataset.takesFocus === "still" });
  place?.select?.();
  // A form that an address opens further down takes focus with it.
  const opened = place ? null : document.querySelector("[data-arrives]");
  if (opened && location.hash === `#${opened.id}` && !opened.contains(document.activeElement)) opened.focus({ preventScroll: true });
};

// A form is sent once. A second Enter before the answer would send it again, and the desk would refuse what it has just taken. After a while
// it may be sent anew, and at once when something in it changed: some forms answer with a file, and a connection can fail.
document.addEventListener("submit", event => {
  if (!("sending" in event.target.dataset)) return;
  event.preventDefault();
  event.stopImmediatePropagation();
}, true);
addEventListener("submit", event => {
  const form = event.target;
  if (form.method !== "post" || (event.defaultPrevented && !form.hasAttribute("data-enhance"))) return;
  form.dataset.sending = "";
  setTimeout(() => delete form.dataset.sending, 15000);
});
for (const change of ["input", "change"]) addEventListener(change, event => delete event.target.form?.dataset.sending);
addEventListener("pageshow", () => document.querySelectorAll("form[data-sending]").forEach(form => delete form.dataset.sending));

// A toast goes after six seconds, but never while somebody is in it.
const retireToasts = () => {
  for (const toast of document.querySelectorAll(".toast[data-passing]:not([data-timed])")) {
    toast.dataset.timed = "yes";
    const leave = () => {
      if (toast.matches(":hover, :focus-within")) setTimeout(leave, 2000);
      else toast.hidden = true;
    };
    setTimeout(leave, 6000);
  }
};

const closeMenus = except => {
  for (const menu of document.querySelectorAll("details.menu[open]")) {
    if (menu !== except) menu.open = false;
  }
};
document.addEventListener("click", event => closeMenus(event.target.closest("details.menu")));
document.addEventListener("keydown", event => {
  if (event.key !== "Escape") return;
  const menu = document.querySelector("details.menu[open]");
  if (!menu) return;
  menu.open = false;
  menu.querySelector("summary").focus();
});

document.addEventListener("click", event => {
  if (event.target.closest("[data-print]")) print();
  if (event.target.closest("[data-reload]")) location.reload();
  const copy = event.target.closest("[data-copy]");
  if (copy) {
    // Without leave to copy it is at least marked, so that the device's own menu can.
    const field = document.getElementById(copy.dataset.copy);
    field.select();
    navigator.clipboard?.writeText(field.value).then(() => { copy.textContent = copy.dataset.copied; }, () => {});
  }
  if (event.target.closest("[data-reconnect]")) {
    Blazor.reconnect().then(back => { if (!back) location.reload(); }, () => location.reload());
  }
  if (event.target.closest("[data-resume]")) {
    Blazor.resumeCircuit().then(back => { if (!back) location.reload(); }, () => location.reload());
  }
});

// A page changed without a reload moves focus to its heading; a page loaded whole is left to the browser, so that the
// skip link stays the first stop.
let place = location.pathname;
const followPage = () => {
  if (location.pathname === place) return;
  place = location.pathname;
  // Where a field waits for the first word, as the counter's does, it is not to be looked for by tabbing.
  const waiting = document.querySelector("main [autofocus]");
  if (waiting) return waiting.focus();
  const heading = document.querySelector("h1");
  if (!heading) return;
  heading.tabIndex = -1;
  heading.focus();
};

// At the counter Escape is the next person, from wherever the cursor is, unless a code half typed would be lost.
document.addEventListener("keydown", event => {
  const next = document.querySelector("[data-next-person]");
  if (event.key !== "Escape" || !next || event.defaultPrevented || document.querySelector("details.menu[open]")) return;
  if (event.target.matches?.("input, textarea") && event.target.value) return;
  next.click();
});

// A refused form answers in place. Said once more, its address is one that Back may ask for again, without a warning about sending twice.
history.replaceState(history.state, "", location.href);

const settle = () => {
  document.querySelectorAll("form[data-sending]").forEach(form => delete form.dataset.sending);
  showConnection();
  focusSummary();
  retireToasts();
};
settle();
globalThis.Blazor?.addEventListener("enhancedload", () => {
  closeMenus();
  followPage();
  settle();
});
