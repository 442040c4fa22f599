// Board and sheet as last seen, kept in this browser so that they open without a connection; how old they are is always said.
"use strict";
const Kept = (() => { // eslint-disable-line no-unused-vars
  const NAME = "kept"; // worker.js reads the same
  const able = "caches" in self && "serviceWorker" in navigator;

  // The worker, and what it will need: pages by path, and the files that this page loads.
  async function begin(paths) {
    if (!able) return;
    try {
      await navigator.serviceWorker.register("/worker.js");
      await navigator.serviceWorker.ready;
      const cache = await caches.open(NAME);
      const files = [...document.querySelectorAll("script[src], link[href]")].map((n) => n.src || n.href);
      const wanted = new Set(files.map((f) => new URL(f).pathname));
      for (const old of await cache.keys()) {
        const path = new URL(old.url).pathname;
        if (path.startsWith("/static/") && !wanted.has(path)) await cache.delete(old);
      }
      for (const file of wanted) if (!(await cache.match(file))) await cache.add(file);
      for (const path of paths) {
        const reply = await fetch(path, { credentials: "same-origin" });
        if (reply.ok && reply.headers.get("X-Keep")) await cache.put(path, reply);
      }
    } catch { /* no room, not allowed, or no connection yet: then nothing is kept */ }
  }

  async function put(path, html) {
    if (!able) return;
    try { await (await caches.open(NAME)).put(path, new Response(html)); } catch { /* no room */ }
  }

  async function last(path) {
    try { return able ? await (await (await caches.open(NAME)).match(path))?.text() : ""; } catch { return ""; }
  }

  async function forget() {
    try { if (able) await caches.delete(NAME); } catch { /* nothing was kept */ }
  }

  return { begin, put, last, forget };
})();
