// Keeps the board fresh and carries the chat. Without it the page still shows everything and reloads by itself.
"use strict";
(() => {
  const board = document.getElementById("board");
  const talk = document.getElementById("talk");
  const stale = document.getElementById("stale");
  const chat = document.querySelector(".chat");
  const text = document.getElementById("text");
  let lostAt = null;

  const key = () => Array.from(crypto.getRandomValues(new Uint8Array(12)), (b) => b.toString(16).padStart(2, "0")).join("");

  function connected(yes) {
    if (yes) { lostAt = null; stale.hidden = true; return; }
    if (lostAt === null) {
      lostAt = new Date();
      const clock = lostAt.toTimeString().slice(0, 5);
      stale.textContent = stale.dataset.text.replace("§", clock);
      stale.hidden = false;
    }
  }

  async function refresh() {
    try {
      const reply = await fetch(`/board/${encodeURIComponent(board.dataset.event)}/part`, { credentials: "same-origin" });
      if (reply.status === 401 || reply.status === 403) { location.replace("/"); return; }
      if (!reply.ok) return;
      const open = [...board.querySelectorAll("details")].map((d) => d.open);
      board.innerHTML = await reply.text();
      board.querySelectorAll("details").forEach((d, i) => { d.open = open[i] || false; });
      look();
      connected(true);
    } catch { connected(false); }
  }

  // On a phone the course is wider than the screen: begin where she is thought to be.
  function look() {
    for (const figure of board.querySelectorAll("figure")) {
      const mark = figure.querySelector("rect.estimate") || figure.querySelector("line.known");
      if (!mark) continue;
      const at = mark.getBoundingClientRect(), frame = figure.getBoundingClientRect();
      figure.scrollLeft += at.left + at.width / 2 - frame.left - frame.width / 2;
    }
  }

  function listen() {
    const source = new EventSource("/stream");
    source.addEventListener("open", () => { connected(true); refresh(); });
    source.addEventListener("changed", refresh);
    source.addEventListener("message", (e) => told(JSON.parse(e.data)));
    source.addEventListener("error", () => connected(false));
  }

  function row(buttons) {
    const div = document.createElement("div");
    div.className = "row";
    for (const b of buttons) {
      const button = document.createElement("button");
      button.type = "button";
      button.dataset.press = b.data;
      button.textContent = b.label;
      div.append(button);
    }
    return div;
  }

  function show(kind, message) {
    const item = document.createElement("li");
    item.className = kind;
    const p = document.createElement("p");
    p.textContent = message.text;
    item.append(p);
    if (message.picture) {
      const img = document.createElement("img");
      img.src = message.picture;
      img.alt = message.alt || "";
      item.append(img);
    }
    for (const buttons of message.buttons || []) item.append(row(buttons));
    talk.append(item);
    item.scrollIntoView({ block: "nearest" });
    return item;
  }

  // What was said here is kept in this tab until it is closed or somebody logs out, so that a reload loses none of it.
  // Notices are not: the server shows those again.
  const kept = `talk:${board.dataset.event}`;
  const KEPT_MAX = 60;
  const ahead = Date.parse(board.dataset.at) - Date.now();  // the server's clock, by which notices are told

  function saved() {
    try { return JSON.parse(sessionStorage.getItem(kept)) || []; } catch { return []; }
  }

  function keep(kind, message) {
    const one = { kind, text: message.text, buttons: message.buttons || [], at: Date.now() + ahead };
    try { sessionStorage.setItem(kept, JSON.stringify([...saved(), one].slice(-KEPT_MAX))); } catch { /* full, or not allowed */ }
    return show(kind, message);
  }

  function restore() {
    for (const one of saved()) {
      const item = show(one.kind, one);
      const later = [...talk.querySelectorAll("[data-at]")].find((n) => Date.parse(n.dataset.at) > one.at);
      if (later) talk.insertBefore(item, later);
    }
  }

  function forget() { try { sessionStorage.removeItem(kept); } catch { /* nothing was kept */ } }

  function told(message) {
    if (message.short && talk.querySelector(`[data-short="${message.short}"]`) && !message.may_repeat) return;
    const item = show(message.urgent ? "told alarm" : "told", message);
    item.dataset.short = message.short;
    if (message.urgent && navigator.vibrate) navigator.vibrate([400, 200, 400]);
  }

  async function say(body, shown) {
    const mine = keep("mine", { text: shown });
    body.key = body.key || key();
    const began = performance.now();
    const attempt = async () => {
      body.age_s = Math.round((performance.now() - began) / 100) / 10;
      const reply = await fetch("/v1/chat", {
        method: "POST", credentials: "same-origin",
        headers: { "Content-Type": "application/json" }, body: JSON.stringify(body),
      });
      const answer = await reply.json();
      if (answer.ok) { if (answer.data.text || answer.data.picture) keep("told", answer.data); }
      else show("told", { text: [answer.error.what, answer.error.do].filter(Boolean).join(". ") });
      connected(true);
    };
    try { await attempt(); } catch {
      connected(false);
      const again = row([{ label: chat.dataset.notSent, data: "" }]);
      again.firstChild.addEventListener("click", async () => {
        try { await attempt(); again.remove(); } catch { connected(false); }
      });
      mine.append(again);
    }
  }

  document.getElementById("say").addEventListener("submit", (e) => {
    e.preventDefault();
    const words = text.value.trim();
    if (!words) return;
    text.value = "";
    say({ text: words }, words);
  });

  talk.addEventListener("click", (e) => {
    const button = e.target.closest("button[data-press]");
    if (!button || !button.dataset.press) return;
    button.parentElement.querySelectorAll("button").forEach((b) => { b.disabled = true; });
    say({ button: button.dataset.press }, button.textContent);
  });

  document.getElementById("place").addEventListener("click", () => {
    if (!navigator.geolocation) { show("told", { text: chat.dataset.refused }); return; }
    const waiting = show("told", { text: chat.dataset.asking });
    navigator.geolocation.getCurrentPosition((at) => {
      waiting.remove();
      const c = at.coords;
      say({ fix: { lat: c.latitude, lon: c.longitude, accuracy_m: c.accuracy } }, chat.dataset.shared);
    }, () => { waiting.querySelector("p").textContent = chat.dataset.refused; },
    { enableHighAccuracy: true, timeout: 30000, maximumAge: 15000 });
  });

  document.getElementById("leave").addEventListener("click", async () => {
    forget();
    await fetch("/leave", { method: "POST", credentials: "same-origin" });
    location.replace("/");
  });

  document.querySelectorAll("[data-be]").forEach((button) => button.addEventListener("click", async () => {
    forget();
    await fetch("/be/" + encodeURIComponent(button.dataset.be), { method: "POST", credentials: "same-origin" });
    location.replace("/");
  }));

  restore();
  if (talk.lastElementChild) talk.scrollTop = talk.scrollHeight;
  look();
  listen();
  setInterval(refresh, 30000); // words such as '23 min ago' age even when nothing happens
})();
