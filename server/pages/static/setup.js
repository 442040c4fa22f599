// The set-up works without this. With it a link opens by itself, a route is shown as soon as it is chosen, the zone is guessed.
"use strict";
const door = document.getElementById("setup-door");
if (door && location.hash.length > 1) {
  door.elements.code.value = decodeURIComponent(location.hash.slice(1));
  history.replaceState(null, "", location.pathname);
  door.submit();
}
for (const input of document.querySelectorAll("[data-at-once]")) {
  input.addEventListener("change", () => input.form.requestSubmit());
}
const zone = document.querySelector("select[name=zone]");
if (zone && !zone.value) zone.value = Intl.DateTimeFormat().resolvedOptions().timeZone || "";
