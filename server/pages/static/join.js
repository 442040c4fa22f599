// Joining: the code stands behind the '#' of the link, so that no server on the way ever logs it.
"use strict";
(() => {
  const form = document.getElementById("join");
  const code = document.getElementById("code");
  const who = document.getElementById("who");
  const lead = document.getElementById("lead");
  const trouble = document.getElementById("trouble");

  // A link tapped in another app arrives without our strict cookie; asking once more from here brings it along.
  if (location.pathname === "/" && !sessionStorage.getItem("asked")) {
    sessionStorage.setItem("asked", "1");
    location.replace("/");
    return;
  }

  async function send(preview) {
    trouble.hidden = true;
    try {
      const reply = await fetch("/join", {
        method: "POST", credentials: "same-origin", headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ code: code.value.trim(), preview }),
      });
      if (reply.ok) return (await reply.json()).data;
      trouble.textContent = reply.status === 429 ? form.dataset.wait : form.dataset.wrong;
    } catch { trouble.textContent = form.dataset.off; }
    trouble.hidden = false;
    who.hidden = true;
    return null;
  }

  form.addEventListener("submit", async (e) => {
    e.preventDefault();
    const found = await send(true);
    if (!found) return;
    const [first, ...rest] = found.you.split("\n");
    const name = document.createElement("strong");
    name.textContent = first;
    document.getElementById("you").replaceChildren(name, ...rest.map((line) => `\n${line}`));
    who.hidden = false;
    // Whoever came by a link has no code to type: who they are and what is asked of them is all they read.
    if (linked) form.hidden = lead.hidden = true;
    document.getElementById("yes").focus();
  });
  document.getElementById("yes").addEventListener("click", async () => {
    if (await send(false)) { sessionStorage.removeItem("asked"); location.replace("/"); }
  });
  document.getElementById("no").addEventListener("click", () => {
    who.hidden = true;
    form.hidden = lead.hidden = false;
    code.value = "";
    code.focus();
  });
  document.querySelectorAll("[data-be]").forEach((button) => button.addEventListener("click", async () => {
    await fetch("/be/" + encodeURIComponent(button.dataset.be), { method: "POST", credentials: "same-origin" });
    location.replace("/");
  }));

  const linked = location.hash.length > 1;
  const given = decodeURIComponent(location.hash.slice(1)) || new URLSearchParams(location.search).get("code");
  if (given) {
    code.value = given;
    history.replaceState(null, "", "/join");
    form.requestSubmit();
  }
})();
