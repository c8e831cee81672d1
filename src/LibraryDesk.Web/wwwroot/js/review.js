// What script adds to the review desk: a list that follows, keys, a zoom, a slider beside the number box. The pages work without it.

// Live: the list is fetched anew when something changed; a case only says so, since somebody may be writing in it.
let source = null;
let followed = null;

const refreshList = async () => {
  const list = document.getElementById("queue-list");
  // Nobody's place is lost: while somebody is in the list it waits for the next change.
  if (!list || list.contains(document.activeElement)) return;
  try {
    const answer = await fetch(location.href, { headers: { accept: "text/html" } });
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    for (const selector of ["#queue-list", ".tabs"]) {
      const now = document.querySelector(selector);
      const then = fresh.querySelector(selector);
      if (now && then && now.innerHTML !== then.innerHTML) now.innerHTML = then.innerHTML;
    }
  } catch {
    // Offline: the bar on top says so, and the next change tries again.
  }
};

const follow = () => {
  const place = document.querySelector("[data-follow], [data-follow-case]");
  const address = place?.dataset.follow ?? place?.dataset.followCase ?? null;
  if (address === followed) return;
  source?.close();
  source = null;
  followed = address;
  if (!address) return;
  source = new EventSource(address);
  const changed = event => {
    if (document.querySelector("[data-follow]")) refreshList();
    const review = document.querySelector("[data-review]");
    if (review && event.data === review.dataset.review) {
      const note = review.querySelector("[data-changed]");
      if (note) note.hidden = false;
    }
  };
  source.addEventListener("changed", changed);
  source.addEventListener("look", changed);
};

// Keys, single letters: off while somebody writes, and off altogether where the reader turned them off.
const keysOff = () => {
  try {
    return localStorage.getItem("review-keys") === "off";
  } catch {
    return false;
  }
};

const keyTargets = {
  "?": "#keys-h", o: "#opinion-h", l: "#look-what", n: "[data-key='n']", z: "[data-key='z']", "[": "[data-key='[']", "]": "[data-key=']']",
};

const zoomOut = () => {
  const button = document.querySelector("[data-zoom-button][aria-pressed=true]");
  button?.click();
  return button;
};

document.addEventListener("keydown", event => {
  if (event.key === "Escape" && zoomOut()) return;
  if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || keysOff()) return;
  if (!document.querySelector("[data-review], [data-key='n']")) return;
  if (event.target.closest("input, textarea, select, [contenteditable]") && !event.target.matches("[type=radio], [type=checkbox]")) return;
  if (/^[1-9]$/.test(event.key)) {
    const row = document.querySelectorAll("#opinion input[type=radio]")[Number(event.key) - 1];
    if (!row) return;
    event.preventDefault();
    row.checked = true;
    row.focus();
    return;
  }
  if (event.key === "?" && !document.querySelector("#keys-h")) {
    location.assign("/help#keys");
    return;
  }
  const selector = keyTargets[event.key.toLowerCase()];
  // What is chosen already takes the focus, so that Enter sends it.
  const chosen = event.key.toLowerCase() === "o" && document.querySelector("#opinion input[type=radio]:checked");
  const target = chosen || (selector && document.querySelector(selector));
  if (!target || target.closest("[hidden]")) return;
  event.preventDefault();
  if (target.matches("a, button")) {
    target.click();
  } else {
    (target.closest("section") ?? target).scrollIntoView({ block: "start" });
    target.focus({ preventScroll: target.matches("h2") });
  }
});

const sayKeys = panel => {
  panel.hidden = false;
  const button = panel.querySelector("[data-keys-switch]");
  button.textContent = keysOff() ? button.dataset.on : button.dataset.off;
  panel.querySelector("dl").hidden = keysOff();
};

document.addEventListener("click", event => {
  const keys = event.target.closest("[data-keys-switch]");
  if (keys) {
    try {
      localStorage.setItem("review-keys", keysOff() ? "on" : "off");
    } catch {
      return;
    }
    sayKeys(keys.closest("[data-review-keys]"));
    for (const line of document.querySelectorAll("[data-keys-link]")) line.hidden = keysOff();
  }
  const zoom = event.target.closest("[data-zoom-button]");
  if (zoom) {
    const box = document.querySelector("[data-zoom-box]");
    const on = box.toggleAttribute("data-zoomed");
    zoom.setAttribute("aria-pressed", String(on));
    if (on) {
      box.tabIndex = 0;
      box.scrollTo((box.scrollWidth - box.clientWidth) / 2, (box.scrollHeight - box.clientHeight) / 2);
    } else {
      box.removeAttribute("tabindex");
    }
  }
});

document.addEventListener("input", event => {
  const slider = event.target.closest("[data-slider-for]");
  if (slider) document.getElementById(slider.dataset.sliderFor).value = slider.value;
  const box = event.target.id && document.querySelector(`[data-slider-for="${CSS.escape(event.target.id)}"]`);
  if (box && event.target.value !== "") box.value = event.target.value;
});

const settle = () => {
  for (const slider of document.querySelectorAll("[data-slider-for]")) slider.hidden = false;
  for (const button of document.querySelectorAll("[data-zoom-button]")) button.hidden = false;
  for (const panel of document.querySelectorAll("[data-review-keys]")) sayKeys(panel);
  for (const line of document.querySelectorAll("[data-keys-link]")) line.hidden = keysOff();
  follow();
};
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
