import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

// Built into the Python package, which serves it; nothing is fetched from anywhere else.
export default defineConfig({
  base: "/static/",
  plugins: [svelte()],
  build: {
    outDir: "../src/loopwright/studio/static",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: "es2022",
  },
  server: { proxy: { "/api": "http://127.0.0.1:8765", "/fonts": "http://127.0.0.1:8765", "/ws": { target: "ws://127.0.0.1:8765", ws: true } } },
});
