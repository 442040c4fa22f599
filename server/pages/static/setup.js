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

// The profile's frame is told by its floor line: what stands between its ends is the whole course.
const profile = document.querySelector("figure.tap svg");
if (profile) {
  for (const told of document.querySelectorAll(".needs-script")) told.hidden = false;
  const rows = () => [...document.querySelectorAll(".things details.thing")];
  let last = null;
  for (const row of rows()) row.addEventListener("toggle", () => { last = row.open ? row : last === row ? null : last; });
  profile.addEventListener("click", (event) => {
    const ground = profile.querySelector(".ground").getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - ground.left) / ground.width));
    const row = last && last.open && last.querySelector("[name$='-km']") ? last : rows().at(-1);
    row.open = true;
    const km = row.querySelector("[name$='-km']");
    km.value = (share * Number(profile.parentElement.dataset.km)).toFixed(1);
    row.scrollIntoView({ block: "center" });
    (row.querySelector("[name$='-name']").value ? km : row.querySelector("[name$='-name']")).focus({ preventScroll: true });
  });
}
