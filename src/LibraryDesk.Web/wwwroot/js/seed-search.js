// Arrows up and down through what a search of the seed found. Without script, Tab does the same.
document.addEventListener("keydown", event => {
  const page = document.querySelector("[data-search]");
  if (!page || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
  const field = page.querySelector("input[type=search]");
  const hits = [...page.querySelectorAll("[data-hit]")];
  const at = hits.indexOf(document.activeElement);
  if (at < 0 && document.activeElement !== field) return;
  const next = event.key === "ArrowDown" ? hits[at + 1] : at <= 0 ? field : hits[at - 1];
  if (!next) return;
  event.preventDefault();
  next.focus();
});
