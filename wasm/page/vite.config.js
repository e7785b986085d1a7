import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { defineConfig } from "vite";

/** Writes the service worker with the list of everything that was built, so that the page works offline. */
function offline() {
  return {
    name: "offline",
    apply: "build",
    generateBundle(_options, bundle) {
      const source = readFileSync(new URL("./src/sw.js", import.meta.url), "utf8");
      const shell = ["manifest.webmanifest", "icon.svg", "icon-192.png", "icon-512.png"];
      const names = ["./", ...Object.keys(bundle).filter((name) => name !== "index.html"), ...shell];
      const hash = createHash("sha256");
      for (const file of Object.values(bundle)) {
        hash.update(file.fileName).update(file.type === "chunk" ? file.code : file.source);
      }
      this.emitFile({
        type: "asset",
        fileName: "sw.js",
        source: source
          .replace("__VERSION__", hash.digest("hex").slice(0, 16))
          .replace("[\"__FILES__\"]", JSON.stringify(names)),
      });
    },
  };
}

export default defineConfig({
  base: "./",
  root: import.meta.dirname,
  build: { target: "es2022", assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  plugins: [offline()],
});
