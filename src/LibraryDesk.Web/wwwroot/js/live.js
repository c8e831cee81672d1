// A case page follows its case. It is read anew when something changed, but never under somebody's fingers.
let source = null;
let following = null;

const refresh = () => {
  const busy = document.activeElement?.matches("input, textarea, select") || document.querySelector("main details[open]");
  const bar = document.getElementById("case-changed");
  if (!busy || !bar) Blazor.navigateTo(location.pathname, { replaceHistoryEntry: true });
  else bar.hidden = false;
};

const follow = () => {
  const page = document.querySelector("[data-live-case]");
  const wanted = page && document.visibilityState === "visible" ? page.dataset.liveCase : null;
  if (wanted === following) return;
  source?.close();
  source = null;
  following = wanted;
  if (!wanted) return;
  source = new EventSource(`/cases/${wanted}/changes?since=${page.dataset.lastEvent}`);
  source.addEventListener("changed", () => {
    source?.close();
    source = null;
    following = null;
    refresh();
  });
};

document.addEventListener("visibilitychange", follow);
follow();
globalThis.Blazor?.addEventListener("enhancedload", follow);
