/** Registers the service worker of the built page, and says when a newer build is waiting. */

/** @param ready called with the way to change to the newer build */
export async function stayOffline(ready: (change: () => void) => void): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  try {
    const place = await navigator.serviceWorker.register(ownScript("service-worker.js") as string);
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

interface Policies {
  createPolicy(
    name: string,
    rules: { createScriptURL: (address: string) => string },
  ): {
    createScriptURL: (address: string) => unknown;
  };
}

/** The policy header lets scripts be named only by this rule: files of the page itself, beside its index. */
function ownScript(name: string): unknown {
  const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;
  const address = new URL(name, document.baseURI).href;
  return policies
    ? policies.createPolicy("own-script", { createScriptURL: (given) => given }).createScriptURL(address)
    : address;
}
