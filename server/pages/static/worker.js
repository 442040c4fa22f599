// Stands between the pages and the network: what cannot be had is shown as it was last seen.
"use strict";
const NAME = "kept"; // kept.js writes the same
const WAIT_MS = 6000; // a signal that hangs is none
const KEEP_MS = 7 * 24 * 3600 * 1000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (e) => e.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  if (e.request.method !== "GET" || url.origin !== self.location.origin) return;
  if (e.request.mode === "navigate") e.respondWith(page(e.request, url.pathname));
  else if (url.pathname.startsWith("/static/") || url.pathname === "/manifest.webmanifest") e.respondWith(file(e.request));
});

async function keptPage(path) {
  const found = await (await caches.open(NAME)).match(path);
  return found && Date.now() - Date.parse(found.headers.get("Date")) < KEEP_MS ? found : null;
}

async function page(request, path) {
  const kept = await keptPage(path);
  const asked = fetch(request).then((reply) => remember(path, reply));
  if (!kept) return asked;
  const late = new Promise((done) => setTimeout(() => done(kept), WAIT_MS));
  return Promise.race([asked.catch(() => kept), late]);
}

// A reader who is not known any more is shown nothing of what an earlier one saw.
async function remember(path, reply) {
  const cache = await caches.open(NAME);
  if (reply.ok && reply.headers.get("X-Keep")) await cache.put(path, reply.clone());
  else if (reply.headers.get("X-Stranger")) await caches.delete(NAME);
  return reply;
}

async function file(request) {
  const cache = await caches.open(NAME);
  return (await cache.match(request)) || fetch(request);
}

// A notice while no page need be open. What is shown was sealed for this browser; the page has the whole and its buttons.
self.addEventListener("push", (e) => {
  let notice = {};
  try { notice = e.data.json(); } catch { /* then only that there is something */ }
  e.waitUntil(Promise.all([shown(notice), told(notice)]));
});

function shown(notice) {
  const urgent = Boolean(notice.urgent);
  return self.registration.showNotification(notice.subject || "Stilepost", {
    body: notice.text || "…", tag: `notice-${notice.short || 0}`, renotify: true, requireInteraction: urgent,
    vibrate: urgent ? [400, 200, 400, 200, 400] : [200],
  });
}

async function windows() { return self.clients.matchAll({ type: "window", includeUncontrolled: true }); }

async function told(notice) { for (const page of await windows()) page.postMessage({ notice }); }

self.addEventListener("notificationclick", (e) => {
  e.notification.close();
  e.waitUntil(windows().then(async (pages) => {
    const page = pages.find((p) => /^\/(board\/|$)/.test(new URL(p.url).pathname));
    if (!page) return self.clients.openWindow("/#chat");
    page.postMessage({ place: "chat" });
    return page.focus();
  }));
});
