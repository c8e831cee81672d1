// Answers survive a lost connection and a closed tab. Each waits on this device until the server has said that it is kept; then it is
// forgotten here. Without this file the form posts as forms do.
const shelf = "desk-answers";

const read = () => {
  try {
    return JSON.parse(localStorage.getItem(shelf) ?? "[]");
  } catch {
    return [];
  }
};

const write = list => {
  try {
    localStorage.setItem(shelf, JSON.stringify(list));
    return true;
  } catch {
    return false;
  }
};

const same = (a, b) => a.caseId === b.caseId && a.trait === b.trait;
const keep = item => write([...read().filter(other => !same(other, item)), item].slice(-60));
const drop = item => write(read().filter(other => !same(other, item)));
const form = () => document.querySelector("form[data-answer]");

const say = (words, sign) => {
  const line = document.querySelector("[data-answer-word]");
  if (!line) return;
  line.querySelector("p").textContent = words;
  line.classList.toggle("wait", sign !== "go");
  line.classList.toggle("go", sign === "go");
  line.hidden = !words;
  if (words) line.scrollIntoView({ block: "center" });
};

// What is said stands in the page, in the reader's language.
const sayWord = name => say(document.querySelector("[data-answer-word]")?.dataset[name]);

const written = (page, submitter) => {
  const fields = [...new FormData(page).entries()].filter(([name, value]) => name !== "__RequestVerificationToken" && typeof value === "string");
  if (submitter?.name) fields.push([submitter.name, submitter.value]);
  return { caseId: page.dataset.case, trait: page.dataset.trait, action: location.pathname + "?trait=" + encodeURIComponent(page.dataset.trait), fields, sent: Boolean(submitter) };
};

// "kept": the server has it. "again": not now. "refused": it is not to be sent as it stands.
const send = async item => {
  const token = document.querySelector("input[name=__RequestVerificationToken]")?.value;
  if (!token) return { state: "again" };
  try {
    const body = new URLSearchParams([...item.fields, ["__RequestVerificationToken", token]]);
    const answer = await fetch(item.action, { method: "POST", body, signal: AbortSignal.timeout(30000) });
    const place = new URL(answer.url);
    if (place.searchParams.get("got") === item.trait) return { state: "kept", place };
    return { state: answer.status >= 500 || place.pathname.startsWith("/account/") ? "again" : "refused" };
  } catch {
    return { state: "again" };
  }
};

let busy = false;
let pause = 2000;
const work = async () => {
  if (busy || !navigator.onLine) return;
  busy = true;
  let next = null;
  try {
    for (const item of read().filter(item => item.sent)) {
      const result = await send(item);
      if (result.state === "again") {
        setTimeout(work, pause);
        pause = Math.min(pause * 2, 60000);
        return;
      }
      pause = 2000;
      // What was refused stays as if it had never been sent, so that its question shows it again.
      if (result.state === "kept") drop(item);
      else keep({ ...item, sent: false });
      if (result.state === "kept" && form()?.dataset.case === item.caseId && form().dataset.trait === item.trait) next = result.place;
    }
  } finally {
    busy = false;
  }
  if (next) location.assign(next);
  else if (read().every(item => !item.sent)) say("");
};

document.addEventListener("submit", event => {
  if (!event.target.matches("form[data-answer]")) return;
  const item = { ...written(event.target, event.submitter), sent: true };
  if (!keep(item) || navigator.onLine) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  sayWord("offline");
}, true);

// Chosen but not sent: kept as it stands.
document.addEventListener("change", event => {
  const page = event.target.closest("form[data-answer]");
  if (page) keep({ ...written(page, null), sent: false });
});

const putBack = () => {
  const page = form();
  if (!page) return;
  const item = read().find(other => !other.sent && other.caseId === page.dataset.case && other.trait === page.dataset.trait);
  if (!item || document.querySelector("[data-takes-focus]")) return;
  for (const input of page.querySelectorAll("input[type=checkbox], input[type=radio]")) input.checked = item.fields.some(([name, value]) => name === input.name && value === input.value);
  for (const input of page.querySelectorAll("input:not([type]), input[type=text]")) input.value = item.fields.find(([name]) => name === input.name)?.[1] ?? input.value;
  sayWord("unsent");
};

// The address names the question, so that Back leads to it and not to whichever is open then.
const nameQuestion = () => {
  const here = new URL(location.href);
  const page = form();
  if (!page || here.searchParams.has("trait")) return;
  here.searchParams.set("trait", page.dataset.trait);
  history.replaceState(history.state, "", here);
};

const settle = () => {
  nameQuestion();
  const got = new URLSearchParams(location.search).get("got");
  const page = location.pathname.match(/^\/cases\/(\d+)\/ask$/);
  if (got && page) drop({ caseId: page[1], trait: got });
  putBack();
  if (read().some(item => item.sent)) {
    if (!navigator.onLine) sayWord("offline");
    work();
  }
};

addEventListener("online", work);
addEventListener("pageshow", event => { if (event.persisted) settle(); });
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
