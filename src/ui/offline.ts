/** Registers the service worker of the built page, and says when a newer build is waiting. */
import { ownScript } from "./own-script.ts";

/** @param ready called with the way to change to the newer build */
export async function stayOffline(ready: (change: () => void) => void): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  try {
    const place = await navigator.serviceWorker.register(
      ownScript(new URL("service-worker.js", document.baseURI).href) as string,
    );
    const look = (worker: ServiceWorker | null) => {
      // Without a controller this is the first visit, and there is nothing older to change from.
      if (worker?.state !== "installed" || !navigator.serviceWorker.controller) return;
      ready(() => {
        navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
        worker.postMessage("take over");
      });
    };
    look(place.waiting);
    place.addEventListener("updatefound", () => {
      const worker = place.installing;
      worker?.addEventListener("statechange", () => look(worker));
    });
  } catch {
    // A browser that refuses it (private windows do) shows the page all the same, as long as it is served.
  }
}
