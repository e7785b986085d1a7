/** Loads the library's module: decoded beside the page's thread, else on it. */
import { init } from "rimewise";
import moduleUrl from "rimewise/module?url";

/** How long the helper may take before the page does the work itself, ms. */
const PATIENCE = 15_000;

/** Loads the module; the page's thread stays free while it is unpacked. */
export async function load(): Promise<void> {
  const url = new URL(moduleUrl, document.baseURI).href;
  const module = await decoded(url).catch(() => null);
  await init(module ?? url);
}

function decoded(url: string): Promise<WebAssembly.Module | null> {
  return new Promise((resolve, reject) => {
    if (typeof Worker !== "function" || !("caches" in globalThis)) {
      resolve(null);
      return;
    }
    const worker = new Worker(new URL("./decode.ts", import.meta.url), { type: "module" });
    const timer = setTimeout(() => reject(new Error("late")), PATIENCE);
    const done = (then: () => void) => {
      clearTimeout(timer);
      worker.terminate();
      then();
    };
    worker.onmessage = (event: MessageEvent<WebAssembly.Module | null>) => done(() => resolve(event.data));
    worker.onerror = () => done(() => reject(new Error("worker")));
    worker.postMessage({ url, scope: new URL("./", document.baseURI).pathname });
  });
}
