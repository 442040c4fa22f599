// What is said here: kept in this browser until it is sent, shown as waiting meanwhile, sent once however many tabs look.
"use strict";
class Outbox { // eslint-disable-line no-unused-vars
  // `owner` tells people and events of one browser apart; `send(body)` answers the server's reply or throws while there is none;
  // `sent(one, reply)` and `changed()` are called here and, after a storage event, in every other tab.
  constructor(owner, send, sent, changed) {
    this.name = `outbox:${owner}`;
    this.send = send;
    this.sent = sent;
    this.memory = [];
    this.busy = false;
    this.keeps = true;
    addEventListener("online", () => this.flush());
    addEventListener("storage", (e) => { if (e.key === this.name) changed(); });
    setInterval(() => this.flush(), 15000); // a server that comes back fires nothing
  }

  all() {
    if (!this.keeps) return this.memory;
    try { return JSON.parse(localStorage.getItem(this.name)) || []; } catch { return this.memory; }
  }

  // Whether it is safe: false where nothing can be kept, so that the words stay in the field.
  write(list) {
    this.memory = list;
    try { localStorage.setItem(this.name, JSON.stringify(list)); this.keeps = true; } catch { this.keeps = false; }
    return this.keeps;
  }

  add(one) { return this.write([...this.all(), one]); }

  async flush() {
    if (this.busy) return;
    this.busy = true;
    const work = () => this.empty();
    try {
      if (navigator.locks) await navigator.locks.request(this.name, work); else await work();
    } finally { this.busy = false; }
  }

  async empty() {
    for (let one = this.all()[0]; one; one = this.all()[0]) {
      // Only how long ago it was said is told: the browser's own clock may be wrong.
      const age = Math.min(Math.max((Date.now() - one.at) / 1000, 0), 24 * 3600 - 1);
      let reply;
      try { reply = await this.send({ ...one.body, key: one.key, age_s: Math.round(age * 10) / 10 }); } catch { return; }
      this.write(this.all().filter((other) => other.key !== one.key));
      this.sent(one, reply);
    }
  }
}
