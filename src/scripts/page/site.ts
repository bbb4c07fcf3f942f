// On every page: "/" goes to the search box; on pages with a matrix or a picker, those are made to work. All of it is extra: pages read without it.

import { offerCopy } from "../offline/offer.js";
import { anchored, unfold } from "./anchor.js";
import { matrixFilters } from "./filters.js";
import { boardPicker } from "./picker.js";
import { sayPrinted } from "./printed.js";

function slashToSearch(): void {
  document.addEventListener("keydown", (event) => {
    if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey) return;
    const at = event.target as HTMLElement;
    if (at.isContentEditable || /^(input|textarea|select)$/i.test(at.tagName)) return;
    const box = document.querySelector<HTMLInputElement>("input[type=search]");
    if (!box) return;
    event.preventDefault();
    box.focus();
    box.select();
  });
}

/** A link to a reason opens it. */
function openTarget(): void {
  const target = anchored(location.hash.slice(1));
  if (!target) return;
  unfold(target);
  const details = target.parentElement?.querySelector("details");
  if (details && target.classList.contains("anchor")) details.open = true;
  target.scrollIntoView({ block: "start" });
}

openTarget();
addEventListener("hashchange", openTarget);
slashToSearch();
sayPrinted();
matrixFilters();
boardPicker();
offerCopy(document.body.dataset.root ?? "").catch(() => {
  // A browser that forbids looking keeps nothing either.
});
