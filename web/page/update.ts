// The service worker that keeps the app on the phone, and what to do when a newer app has arrived.

const WORKER = "service-worker.js";

/** Keeps the app; tells when a newer one waits for this one to end. */
export async function keepApp(onNewer: (worker: ServiceWorker) => void): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  const kept = await navigator.serviceWorker.register(new URL(WORKER, document.baseURI));
  const look = (worker: ServiceWorker | null): void => {
    if (worker?.state === "installed" && navigator.serviceWorker.controller) onNewer(worker);
  };
  look(kept.waiting);
  kept.addEventListener("updatefound", () => {
    const fresh = kept.installing;
    fresh?.addEventListener("statechange", () => look(fresh));
  });
}

/** The newer app takes over, and the page is loaded anew from it; nothing that was kept is touched. */
export function takeOver(worker: ServiceWorker): void {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  worker.postMessage("take over");
}
