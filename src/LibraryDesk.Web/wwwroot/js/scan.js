// Reads QR codes with the camera where the browser can. Nothing leaves the device but the code that was read.
const stops = new WeakMap();

const show = () => {
  for (const box of document.querySelectorAll("[data-scanner]")) box.hidden = !("BarcodeDetector" in window && navigator.mediaDevices);
};

const start = async box => {
  const video = box.querySelector("video");
  const word = box.querySelector("[data-scan-word]");
  let stream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  } catch {
    word.textContent = box.dataset.closed;
    return;
  }
  video.srcObject = stream;
  video.hidden = false;
  await video.play();
  word.textContent = box.dataset.hold;
  const detector = new BarcodeDetector({ formats: ["qr_code"] });
  const stop = () => {
    stream.getTracks().forEach(track => track.stop());
    stops.delete(box);
  };
  stops.set(box, stop);
  const look = async () => {
    if (!box.isConnected || !stops.has(box)) return stop();
    const [found] = await detector.detect(video).catch(() => []);
    if (!found) return requestAnimationFrame(look);
    stop();
    navigator.vibrate?.(60);
    const field = box.dataset.scanInto && document.getElementById(box.dataset.scanInto);
    if (field) {
      field.value = found.rawValue;
      word.textContent = box.dataset.read;
      video.hidden = true;
      return field.form.requestSubmit();
    }
    word.textContent = box.dataset.opening;
    location.href = "/scan?code=" + encodeURIComponent(found.rawValue);
  };
  look();
};

document.addEventListener("click", event => {
  const button = event.target.closest?.("[data-scan-start]");
  if (button) start(button.closest("[data-scanner]"));
});

show();
globalThis.Blazor?.addEventListener?.("enhancedload", show);
