// Keeps the board fresh and carries the chat. Without it the page still shows everything and reloads by itself.
"use strict";
(() => {
  const board = document.getElementById("board");
  const talk = document.getElementById("talk");
  const stale = document.getElementById("stale");
  const chat = document.querySelector(".chat");
  const text = document.getElementById("text");
  const reports = [], REPORTS_SHOWN = 3;
  let point = "", lostAt = null, leaving = false;

  const key = () => Array.from(crypto.getRandomValues(new Uint8Array(12)), (b) => b.toString(16).padStart(2, "0")).join("");

  // The server's clock, by which everything here is told: a phone's own may be wrong, or in another zone.
  let ahead = 0;
  function clockOf(at) {
    const how = { hour: "2-digit", minute: "2-digit", hourCycle: "h23", timeZone: board.dataset.zone };
    return new Intl.DateTimeFormat("en-GB", how).format(at);
  }
  // Of a board kept from before only its age is known: how far the clocks differ was found out then.
  let shownAt = Date.now();
  function setClock(live) {
    const now = board.querySelector("[data-at]");
    if (now) shownAt = Date.parse(now.dataset.at);
    try {
      const had = localStorage.getItem("clock:ahead");
      ahead = !live && had ? Number(had) : shownAt - Date.now();
      if (live && !leaving) localStorage.setItem("clock:ahead", String(ahead));
    } catch { ahead = shownAt - Date.now(); }
  }

  function connected(yes) {
    if (yes) { lostAt = null; stale.hidden = true; return; }
    if (lostAt === null) {
      lostAt = shownAt;
      stale.textContent = stale.dataset.text.replace("§", () => clockOf(lostAt));
      stale.hidden = false;
    }
  }

  async function refresh() {
    try {
      const reply = await fetch(partPath, { credentials: "same-origin" });
      if (reply.status === 401 || reply.status === 403) { location.replace("/"); return; }
      if (!reply.ok) return;
      const part = await reply.text();
      if (board.contains(document.activeElement) && document.activeElement.matches("input, select")) return;  // not while somebody types
      draw(part);
      setClock(true);
      look();
      connected(true);
      Kept.put(partPath, part);
    } catch { await lost(); }
  }

  async function lost() { await lastSeen(); connected(false); }

  const also = new URLSearchParams(location.search).get("runner");
  const partPath = `/board/${encodeURIComponent(board.dataset.event)}/part${also ? `?runner=${encodeURIComponent(also)}` : ""}`;
  // Whoever goes by keyboard or has it read out stays where they are.
  function draw(part) {
    const stops = () => [...board.querySelectorAll("a[href], button, summary, [tabindex]")];
    const at = stops().indexOf(document.activeElement), words = document.activeElement?.textContent;
    const open = [...board.querySelectorAll("details")].map((d) => d.open);
    board.innerHTML = part;
    answered();
    const where = document.getElementById("where");
    if (where && point) where.value = point;
    board.querySelectorAll("details").forEach((d, i) => { d.open = open[i] || false; });
    if (at < 0) return;
    const again = stops();
    const same = again[at]?.textContent === words ? again[at] : again.find((n) => n.textContent === words);
    (same || again[at])?.focus({ preventScroll: true });
  }

  // The page is kept as it was opened, what changes as it was last seen: opened without a connection, the later one counts.
  let looked = false;
  async function lastSeen() {
    if (looked) return;
    looked = true;
    const part = await Kept.last(partPath);
    const at = part && /data-at="([^"]+)"/.exec(part);
    if (!at || !(Date.parse(at[1]) > shownAt)) return;
    draw(part);
    setClock(false);
    look();
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

  // One place at a time on a phone; the address keeps which, so that back and a reload lead where they should.
  const pages = document.querySelector(".pages");
  const unread = document.getElementById("unread");
  const PLACES = ["now", "plan", "chat", "people"];
  let waiting = 0;

  const narrow = () => matchMedia("(max-width: 899px)").matches;
  const reads = () => !narrow() || pages.dataset.place === "chat";

  function count(more) {
    waiting = reads() && !document.hidden ? 0 : waiting + more;
    unread.hidden = waiting === 0;
    unread.textContent = String(waiting);
    unread.setAttribute("aria-label", unread.dataset.text.replace("§", String(waiting)));
  }

  function go() {
    const wanted = location.hash.slice(1);
    const place = PLACES.includes(wanted) ? wanted : "now";
    pages.dataset.place = place;
    document.querySelectorAll("nav.bar a").forEach((a) => {
      if (a.hash === `#${place}`) a.setAttribute("aria-current", "page"); else a.removeAttribute("aria-current");
    });
    count(0);
    if (!narrow()) return;
    scrollTo(0, place === "chat" ? document.documentElement.scrollHeight : 0);
    look();
  }

  function listen() {
    const source = new EventSource("/stream");
    source.addEventListener("open", () => { connected(true); refresh(); outbox.flush(); });
    source.addEventListener("changed", refresh);
    source.addEventListener("message", (e) => told(JSON.parse(e.data)));
    source.addEventListener("error", lost);
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

  // What was said here is kept in this browser until somebody logs out, so that a reload loses none of it and a second tab
  // shows it too. Notices are not: the server shows those again.
  const owner = `${board.dataset.event}:${board.dataset.person}`;
  const kept = `talk:${owner}`;
  const KEPT_MAX = 60;

  function saved() {
    try { return JSON.parse(localStorage.getItem(kept)) || []; } catch { return []; }
  }

  function keep(kind, message, id, at = Date.now() + ahead) {
    const one = { id, kind, text: message.text, buttons: message.buttons || [], at };
    const others = saved().filter((other) => other.id !== id);
    try { localStorage.setItem(kept, JSON.stringify([...others, one].slice(-KEPT_MAX))); } catch { /* full, or not allowed */ }
    return drawn(one, message.picture, message.alt);
  }

  // One thing said, in its place in time and once.
  function drawn(one, picture, alt) {
    const there = [...talk.children].find((li) => li.dataset.id === one.id);
    if (there) { there.classList.remove("waiting"); there.querySelector(".wait")?.remove(); return there; }
    const item = show(one.kind, { ...one, picture, alt });
    item.dataset.id = one.id;
    item.dataset.at = new Date(one.at).toISOString();
    const later = [...talk.querySelectorAll("[data-at]")].find((n) => n !== item && Date.parse(n.dataset.at) > one.at);
    if (later) talk.insertBefore(item, later);
    return item;
  }

  // By the server's clock as it was then: set anew meanwhile, it must not put an answer before its question.
  const saidAt = (one) => one.said || one.at + ahead;

  function waits(one) {
    if ([...talk.children].some((li) => li.dataset.id === one.key)) return;
    const item = show("mine waiting", { text: one.shown });
    item.dataset.id = one.key;
    item.dataset.at = new Date(saidAt(one)).toISOString();
    const note = document.createElement("small");
    note.className = "wait";
    note.textContent = chat.dataset.waiting.replace("§", () => clockOf(saidAt(one)));
    item.append(note);
  }

  function restore() {
    saved().forEach((one) => drawn(one));
    outbox.all().forEach(waits);
    answered();
  }

  function forget() {
    leaving = true;
    try {
      Object.keys(localStorage).filter((k) => /^(talk|outbox|draft|clock):/.test(k)).forEach((k) => localStorage.removeItem(k));
    } catch { /* nothing was kept */ }
    return Kept.forget();
  }

  function told(message) {
    if (message.short && talk.querySelector(`[data-short="${message.short}"]`) && !message.may_repeat) return;
    const item = show(message.urgent ? "told alarm" : "told", message);
    item.dataset.short = message.short;
    count(1);
    if (message.urgent && navigator.vibrate) navigator.vibrate([400, 200, 400]);
  }

  async function send(body) {
    let reply;
    try {
      reply = await fetch("/v1/chat", {
        method: "POST", credentials: "same-origin",
        headers: { "Content-Type": "application/json" }, body: JSON.stringify(body),
      });
    } catch (error) { connected(false); throw error; }
    // Not now, or not as anybody we know: what was written stays until it can go.
    if (reply.status >= 500 || [401, 403, 429].includes(reply.status)) throw new Error("not now");
    const answer = await reply.json();
    connected(true);
    return answer;
  }

  const outbox = new Outbox(owner, send, (one, answer) => {
    keep("mine", { text: one.shown }, one.key, saidAt(one));
    if (one.body.text && text.value.trim() === one.body.text) text.value = "";
    const reply = `${one.key}.reply`;
    if (!answer.ok) show("told", { text: [answer.error.what, answer.error.do].filter(Boolean).join(". ") }).dataset.id = reply;
    else if (answer.data.text || answer.data.picture) keep("told", answer.data, reply, Math.max(Date.now() + ahead, saidAt(one) + 1));
    answered();
  }, restore);
  addEventListener("storage", (e) => { if (e.key === kept) restore(); });

  // Whether it is kept; it is shown as waiting until the server has it.
  function say(body, shown, as = key()) {
    const one = { key: as, body, shown, at: Date.now(), said: Date.now() + ahead };
    const safe = outbox.add(one);
    waits(one);
    outbox.flush();
    return safe;
  }

  const draft = `draft:${owner}`;
  try { text.value = localStorage.getItem(draft) || ""; } catch { /* not allowed */ }
  text.addEventListener("input", () => { try { localStorage.setItem(draft, text.value); } catch { /* full */ } });

  document.getElementById("say").addEventListener("submit", (e) => {
    e.preventDefault();
    const words = text.value.trim();
    if (!words || !say({ text: words }, words)) return;
    text.value = "";
    try { localStorage.removeItem(draft); } catch { /* not allowed */ }
  });

  // Buttons of the chat, and those of the board: a press there is answered in the chat, which it opens.
  pages.addEventListener("click", (e) => {
    const button = e.target.closest("button[data-press], button[data-say], button[data-bib]");
    if (!button) return;
    const { press, say: words, bib } = button.dataset;
    if (button.closest("#answered")) {
      location.hash = "#chat";
      [...talk.querySelectorAll("button")].find((b) => b.dataset.press === press)?.click();
      return;
    }
    if (bib) { report(bib); return; }
    if (!press && !words) return;
    // A row holds alternatives; the things of a stop are logged one after the other.
    const [kind, , , thing, how] = (press || "").split("|");
    const row = kind === "l" && thing && !how ? [button] : button.parentElement.querySelectorAll("button");
    row.forEach((b) => { b.disabled = true; });
    if (!talk.contains(button)) location.hash = "#chat";
    say(press ? { button: press } : { text: words }, press ? button.textContent : words);
  });

  // The point that was chosen stays chosen for the next runner.
  board.addEventListener("change", (e) => { if (e.target.id === "where") point = e.target.value; });

  function report(template) {
    const field = document.getElementById("bib"), where = document.getElementById("where");
    const bib = field.value.trim();
    if (!bib) { field.focus(); return; }
    const words = template.replace("§", () => bib).replace("¶", () => (where ? where.value : ""));
    field.value = "";
    const as = key();
    reports.splice(REPORTS_SHOWN - 1);
    reports.unshift(as);
    say({ text: words }, words, as);
    answered();
  }

  // On a phone whoever reports one runner after another stays there: what was said in the chat stands beside the bib too.
  function answered() {
    const said = reports.flatMap((as) => [as, `${as}.reply`]).map((id) => [...talk.children].find((li) => li.dataset.id === id));
    document.getElementById("answered")?.replaceChildren(...said.filter(Boolean).map((li) => {
      const item = li.cloneNode(true);
      delete item.dataset.at;
      return item;
    }));
  }

  // Made small here: a hill's signal carries no twelve megapixels, and what the camera wrote into it stays on the telephone.
  const PHOTO_SIDE = 1280, PHOTO_MAX = 680000;
  async function small(file) {
    const image = await createImageBitmap(file);
    for (let side = PHOTO_SIDE; ; side /= 2) {
      const scale = Math.min(1, side / Math.max(image.width, image.height));
      const canvas = document.createElement("canvas");
      canvas.width = Math.max(1, Math.round(image.width * scale));
      canvas.height = Math.max(1, Math.round(image.height * scale));
      canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
      const data = canvas.toDataURL("image/jpeg", 0.8).split(",")[1];
      if (data.length < PHOTO_MAX || side < 200) return data;
    }
  }

  const file = document.getElementById("photo-file");
  document.getElementById("photo").addEventListener("click", () => file.click());
  file.addEventListener("change", async () => {
    const chosen = file.files[0];
    if (!chosen) return;
    file.value = "";
    let photo;
    try { photo = await small(chosen); } catch { show("told", { text: chat.dataset.noPhoto }); return; }
    const words = text.value.trim();
    if (!say(words ? { photo, text: words } : { photo }, [`[${chat.dataset.photo}]`, words].filter(Boolean).join(" "))) return;
    text.value = "";
    try { localStorage.removeItem(draft); } catch { /* not allowed */ }
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

  // What came by push stands in the chat of an open page too.
  navigator.serviceWorker?.addEventListener("message", (e) => {
    if (e.data.notice?.text) told(e.data.notice);
    if (e.data.place) location.hash = `#${e.data.place}`;
  });

  document.getElementById("leave").addEventListener("click", async () => {
    await Push.off();
    await forget();
    await fetch("/leave", { method: "POST", credentials: "same-origin" });
    location.replace("/");
  });

  document.querySelectorAll("[data-be]").forEach((button) => button.addEventListener("click", async () => {
    await forget();
    await fetch("/be/" + encodeURIComponent(button.dataset.be), { method: "POST", credentials: "same-origin" });
    location.replace("/");
  }));

  pages.classList.add("live");
  addEventListener("hashchange", go);
  document.addEventListener("visibilitychange", () => count(0));
  setClock(false);
  restore();
  go();
  if (talk.lastElementChild) talk.scrollTop = talk.scrollHeight;
  look();
  listen();
  outbox.flush();
  Kept.begin([location.pathname, `/sheet/${encodeURIComponent(board.dataset.event)}`]);
  setInterval(refresh, 30000); // words such as '23 min ago' age even when nothing happens
})();
