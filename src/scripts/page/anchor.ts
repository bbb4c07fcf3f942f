// The place on a page that an address names behind "#". People copy and cut addresses: one that cannot be decoded names what it says.

export function anchored(anchor: string): HTMLElement | null {
  if (anchor === "") return null;
  try {
    return document.getElementById(decodeURIComponent(anchor));
  } catch {
    return document.getElementById(anchor);
  }
}

/** Opens whatever the place is folded away in. */
export function unfold(at: Element | null): void {
  for (let box = at?.closest("details"); box; box = box.parentElement?.closest("details")) box.open = true;
}
