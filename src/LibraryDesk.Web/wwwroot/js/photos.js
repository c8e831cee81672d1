// Photos go up in the background, with progress. Each waits in the browser's own database until the server says it is stored,
// so a reload, a closed page or a lost signal loses none. Without this file the forms send them the plain way.
const database = new Promise((resolve, reject) => {
  const opening = indexedDB.open("desk-photos", 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore("waiting", { keyPath: "key" });
  opening.onsuccess = () => resolve(opening.result);
  opening.onerror = () => reject(opening.error);
});

const store = async (mode, deed) => {
  const db = await database;
  return new Promise((resolve, reject) => {
    const turn = db.transaction("waiting", mode);
    const asked = deed(turn.objectStore("waiting"));
    turn.oncomplete = () => resolve(asked.result);
    turn.onerror = () => reject(turn.error);
  });
};

const mostBytes = 20_000_000;
const placeOf = item => document.querySelector(`[data-photo-places="${CSS.escape(item.caseId)}"] [data-place="${CSS.escape(item.part)}"]`);

// What is said stands in the page, in the reader's language.
const words = (name, number) => (document.querySelector("[data-photo-word]")?.dataset[name] ?? "").replace("{0}", number);

const say = words => {
  const line = document.querySelector("[data-photo-word]");
  if (line) line.textContent = words;
};

const showError = (place, words) => {
  if (!place) return say(words);
  const line = place.querySelector("[data-error]");
  line.textContent = words;
  line.hidden = !words;
};

const showRefused = (place, words) => {
  showWaiting(place, false);
  const frame = place?.querySelector(".pic");
  if (frame?.former) {
    frame.replaceChildren(...frame.former);
    frame.former = null;
    if (!frame.querySelector("img")) place.classList.remove("full");
  }
  showError(place, words);
};

// The line under a place says that a photo waits; what it said before comes back.
const showWaiting = (place, waits) => {
  const line = place?.querySelector("[data-kept]");
  if (!line) return;
  const text = line.querySelector("[data-count]");
  if (waits) line.former ??= { hidden: line.hidden, words: text.textContent };
  line.classList.toggle("waits", waits);
  line.hidden = waits ? false : line.former?.hidden ?? line.hidden;
  text.textContent = waits ? words("waiting") : line.former?.words ?? text.textContent;
  if (!waits) line.former = null;
};

const showProgress = (place, share) => {
  const bar = place?.querySelector("[data-bar]");
  if (!bar) return;
  bar.hidden = share === null;
  bar.value = Math.round((share ?? 0) * 100);
};

const showKept = (place, kept, local) => {
  if (!place) return;
  const frame = place.querySelector(".pic");
  // What stood there before comes back when the photo is refused.
  if (!kept) frame.former ??= [...frame.childNodes];
  else frame.former = null;
  showWaiting(place, !kept);
  const picture = document.createElement("img");
  picture.className = "ph";
  picture.alt = "";
  picture.src = kept ? kept.small : local;
  frame.replaceChildren(picture);
  place.classList.add("full");
  if (!kept) return;
  const line = place.querySelector("[data-kept]");
  const count = Number(line.dataset.extra ?? 0) + 1;
  line.dataset.extra = String(count);
  line.hidden = false;
  line.querySelector("[data-count]").textContent = count === 1 ? words("keptOne") : words("keptSent", count);
};

// Resolves to what to do with the photo: drop it (stored, or refused for good) or keep it for another try.
const send = (item, token) => new Promise(resolve => {
  const body = new FormData();
  body.append("__RequestVerificationToken", token);
  body.append("part", item.part);
  if (item.look) body.append("look", item.look);
  body.append("photo", item.file, "photo");
  const request = new XMLHttpRequest();
  request.open("POST", item.action);
  request.responseType = "json";
  request.upload.onprogress = event => event.lengthComputable && showProgress(placeOf(item), event.loaded / event.total);
  request.onerror = request.ontimeout = () => resolve({ again: true });
  request.onload = () => {
    if (request.status === 201) return resolve({ kept: request.response });
    if (request.status >= 500 || request.status === 429 || request.status === 0) return resolve({ again: true });
    resolve({ refused: request.response?.detail ?? words("refused") });
  };
  request.send(body);
});

// Without a connection nothing is tried, but nobody shall read that all is kept.
const sayWaiting = async () => {
  if (await store("readonly", all => all.count()) > 0) say(words("later"));
};

let sending = false;
let pause = 2000;
const work = async () => {
  if (sending) return;
  if (!navigator.onLine) return sayWaiting();
  sending = true;
  try {
    for (;;) {
      const waiting = await store("readonly", all => all.getAll());
      // A photo can only be sent with this page's own token; other cases' photos wait for their page or go with it too.
      const token = document.querySelector("input[name=__RequestVerificationToken]")?.value;
      if (!token || waiting.length === 0) break;
      const item = waiting[0];
      showProgress(placeOf(item), 0);
      say(waiting.length === 1 ? words("sendingOne") : words("sending", waiting.length));
      const result = await send(item, token);
      showProgress(placeOf(item), null);
      if (result.again) {
        say(words("later"));
        setTimeout(work, pause);
        pause = Math.min(pause * 2, 60000);
        break;
      }
      await store("readwrite", all => all.delete(item.key));
      pause = 2000;
      if (result.kept) showKept(placeOf(item), result.kept);
      else showRefused(placeOf(item), result.refused);
      if (waiting.length === 1) say(result.kept ? words("allKept") : "");
    }
  } finally {
    sending = false;
  }
};

document.addEventListener("change", async event => {
  const form = event.target.closest("form[data-photo-form]");
  if (!form || event.target.type !== "file") return;
  const place = form.closest("[data-place]");
  const file = event.target.files[0];
  if (!file) return;
  showError(place, "");
  if (file.size > mostBytes) {
    showError(place, words("tooLarge"));
    event.target.value = "";
    return;
  }
  const caseId = form.closest("[data-photo-places]").dataset.photoPlaces;
  const data = new FormData(form);
  const item = { key: `${Date.now()}-${file.size}-${file.name}`, caseId, action: form.dataset.action, part: data.get("part"), look: data.get("look"), file };
  try {
    await store("readwrite", all => all.put(item));
  } catch {
    // No room or a private window: the plain form still works.
    form.requestSubmit();
    return;
  }
  event.target.value = "";
  showKept(place, null, URL.createObjectURL(file));
  work();
});

const dress = () => {
  for (const form of document.querySelectorAll("form[data-photo-form]:not([data-dressed])")) {
    form.dataset.dressed = "yes";
    form.querySelector("[data-send]").hidden = true;
    form.querySelector("input[type=file]").classList.add("vh");
  }
  work();
};

addEventListener("online", work);
dress();
globalThis.Blazor?.addEventListener("enhancedload", dress);
