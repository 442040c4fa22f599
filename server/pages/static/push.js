// Web push: the page may wake this phone when it is closed. Switched on by hand; what it can't promise is said beside the switch.
"use strict";
const Push = (() => { // eslint-disable-line no-unused-vars
  const box = document.getElementById("push");
  const able = box && "serviceWorker" in navigator && "PushManager" in self && "Notification" in self;
  const button = box?.querySelector("button"), said = box?.querySelector("[role=status]");

  function post(path, subscription) {
    const { endpoint, keys } = subscription.toJSON();
    return fetch(path, {
      method: "POST", credentials: "same-origin", headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ endpoint, p256dh: keys.p256dh, auth: keys.auth }),
    });
  }

  function key() {
    const text = atob(box.dataset.key.replace(/-/g, "+").replace(/_/g, "/"));
    return Uint8Array.from(text, (c) => c.charCodeAt(0));
  }

  const current = async () => (await navigator.serviceWorker.ready).pushManager.getSubscription();

  function shown(on) {
    button.setAttribute("aria-pressed", String(on));
    button.textContent = on ? box.dataset.off : box.dataset.on;
    said.textContent = on ? box.dataset.isOn : "";
  }

  async function on() {
    if (await Notification.requestPermission() !== "granted") throw new Error("not allowed");
    const manager = (await navigator.serviceWorker.ready).pushManager;
    const subscription = await manager.subscribe({ userVisibleOnly: true, applicationServerKey: key() });
    if (!(await post("/v1/push", subscription)).ok) { await subscription.unsubscribe(); throw new Error("not taken"); }
  }

  async function off() {
    if (!able) return;
    try {
      const subscription = await current();
      if (!subscription) return;
      await post("/v1/push/off", subscription);
      await subscription.unsubscribe();
    } catch { /* no connection: the browser's own switch is left */ }
  }

  async function press() {
    const wanted = button.getAttribute("aria-pressed") !== "true";
    button.disabled = true;
    try {
      if (wanted) await on(); else await off();
      shown(wanted);
    } catch { said.textContent = box.dataset.refused; }
    button.disabled = false;
  }

  if (able) {
    box.hidden = false;
    button.addEventListener("click", press);
    shown(false);
    current().then((subscription) => {
      shown(Boolean(subscription) && Notification.permission === "granted");
      if (subscription) return post("/v1/push", subscription); // it may be somebody else who is logged in now
    }).catch(() => {});
  }
  return { off };
})();
