// Day, dark or red for the night, and large text: a choice kept in this browser, set before anything is drawn.
"use strict";
(() => {
  const LOOKS = ["day", "dark", "red"];
  const read = (name) => { try { return localStorage.getItem(name) || ""; } catch { return ""; } };
  const root = document.documentElement;
  function set() {
    const look = read("look");
    if (LOOKS.includes(look)) root.dataset.look = look; else delete root.dataset.look;
    if (read("large")) root.dataset.large = ""; else delete root.dataset.large;
  }
  set();
  addEventListener("storage", set);
  addEventListener("DOMContentLoaded", () => {
    const choice = document.getElementById("look"), large = document.getElementById("large");
    if (!choice) return;
    choice.closest("[hidden]")?.removeAttribute("hidden");
    choice.value = root.dataset.look || "";
    large.checked = "large" in root.dataset;
    choice.addEventListener("change", () => { try { localStorage.setItem("look", choice.value); } catch { /* not allowed */ } set(); });
    large.addEventListener("change", () => { try { localStorage.setItem("large", large.checked ? "1" : ""); } catch { /* not allowed */ } set(); });
  });
})();
