/** One photo a visit, kept on the device, small enough to keep many. */

const STORE = "photos";

/** The longer side of a kept photo, px: a plate can still be read. */
const LONGER = 1280;

function database(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("rimewise", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("no database"));
  });
}

async function run<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const base = await database();
  try {
    return await new Promise<T>((resolve, reject) => {
      const request = work(base.transaction(STORE, mode).objectStore(STORE));
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error ?? new Error("not kept"));
    });
  } finally {
    base.close();
  }
}

/** Reads a picture, makes it small, and keeps it with a visit. */
export async function keepPhoto(id: string, file: Blob): Promise<void> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGER / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const small = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/jpeg", 0.82));
  if (small === null) throw new Error("not drawn");
  await run("readwrite", (store) => store.put(small, id));
}

/** The photo of a visit; nothing where there is none or the browser keeps none. */
export async function photoOf(id: string): Promise<Blob | undefined> {
  try {
    const kept = await run<unknown>("readonly", (store) => store.get(id));
    return kept instanceof Blob ? kept : undefined;
  } catch {
    return undefined;
  }
}

export async function forgetPhoto(id: string): Promise<void> {
  await run("readwrite", (store) => store.delete(id)).catch(() => undefined);
}
