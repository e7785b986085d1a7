/** Compiles the module away from the page's thread, and keeps it, so that the next start needs no network. */
const CACHE = "rimewise-module:";

/** Asks for the module's bytes and compiles them; the answer is the module, or nothing where that failed. */
self.onmessage = async (event: MessageEvent<{ url: string; scope: string }>) => {
  const { url, scope } = event.data;
  try {
    self.postMessage(await compiled(url, scope));
  } catch {
    self.postMessage(null);
  }
};

async function compiled(url: string, scope: string): Promise<WebAssembly.Module> {
  const cache = await caches.open(CACHE + scope).catch(() => undefined);
  const kept = await cache?.match(url);
  if (kept !== undefined) return WebAssembly.compileStreaming(kept);
  const response = await fetch(url);
  if (!response.ok) throw new Error(String(response.status));
  const bytes = await response.arrayBuffer();
  const unpacked = new Response(bytes, { headers: { "content-type": "application/wasm" } });
  if (cache !== undefined) {
    // One module is kept, the one in use.
    for (const old of await cache.keys()) await cache.delete(old);
    await cache.put(url, unpacked.clone()).catch(() => undefined);
  }
  return WebAssembly.compileStreaming(unpacked);
}
