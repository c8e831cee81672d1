// The search from anywhere by one key, and what was opened lately. The list stays on this device, apart for each person, and goes at signing out.
const most = 8;
const places = /^\/(cases|queue|lots|p|guides)\/[^/]+(\/[^/]+)?$/;
const keyOf = () => {
  const person = document.querySelector("[data-me]")?.dataset.me;
  return person ? `recent-${person}` : null;
};

const read = () => {
  try {
    return JSON.parse(localStorage.getItem(keyOf()) ?? "[]");
  } catch {
    return [];
  }
};

const write = list => {
  try {
    localStorage.setItem(keyOf(), JSON.stringify(list));
  } catch {
    // A private window or no room: nothing is remembered.
  }
};

const remember = () => {
  const heading = document.querySelector("main h1")?.textContent.trim();
  if (!keyOf() || !heading || !places.test(location.pathname) || /\/(new|ask|photos|parts|origin|look)$/.test(location.pathname)) return;
  const here = { path: location.pathname, heading: heading.slice(0, 90) };
  write([here, ...read().filter(p => p.path !== here.path)].slice(0, most));
};

const show = () => {
  const box = document.querySelector("[data-recent]");
  if (!box || !keyOf()) return;
  const list = read();
  box.hidden = list.length === 0;
  box.querySelector("[data-recent-list]").replaceChildren(...list.map(place => {
    const line = document.createElement("li");
    const link = document.createElement("a");
    link.className = "t";
    link.href = place.path;
    link.textContent = place.heading;
    line.append(link);
    return line;
  }));
};

const forget = () => {
  try {
    for (const key of Object.keys(localStorage).filter(k => k.startsWith("recent-"))) localStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
};

document.addEventListener("keydown", event => {
  const slash = event.key === "/" && !event.ctrlKey && !event.metaKey && !event.altKey;
  const palette = event.key.toLowerCase() === "k" && (event.ctrlKey || event.metaKey);
  if (!slash && !palette) return;
  if (slash && event.target.closest("input, textarea, select, [contenteditable]")) return;
  const menu = document.querySelector("details.menu-search");
  const box = menu?.querySelector("input") ?? document.getElementById("q");
  if (!box) return;
  event.preventDefault();
  if (menu) menu.open = true;
  box.focus();
});

document.addEventListener("toggle", event => {
  if (event.target.matches?.("details.menu-search[open]")) event.target.querySelector("input").focus();
}, true);

document.addEventListener("click", event => {
  if (!event.target.closest("[data-recent-forget]")) return;
  forget();
  show();
});

document.addEventListener("submit", event => {
  if (event.target.getAttribute("action") === "/account/sign-out") forget();
}, true);

const settle = () => {
  remember();
  show();
};
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
