// What a drawing looks like to a browser: does text stand on text, does a wire run through a label, does anything hang over the edge.
import type { Page } from "playwright-core";

/** Complaints about the one drawing on the page; none when it is clean. Runs in the page. */
export function complaints(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const svg = document.querySelector("svg.dw") as SVGSVGElement;
    const frame = svg.getBoundingClientRect();
    const scale = frame.width / svg.viewBox.baseVal.width;
    const slack = 0.6 * scale;
    // The line box of a text is taller than its letters; what letters cover is about this part of it.
    const letters = (t: Element) => {
      const r = t.getBoundingClientRect();
      return {
        left: r.left + slack,
        right: r.right - slack,
        top: r.top + r.height * 0.24,
        bottom: r.bottom - r.height * 0.24,
        says: t.textContent ?? "",
      };
    };
    const texts = [...svg.querySelectorAll("text")].filter((t) => (t.textContent ?? "").trim() !== "").map(letters);
    const found: string[] = [];
    for (const t of texts)
      if (t.left < frame.left - 1 || t.right > frame.right + 1 || t.top < frame.top - 1 || t.bottom > frame.bottom + 1)
        found.push(`"${t.says}" hangs over the edge`);
    texts.forEach((a, i) => {
      for (const b of texts.slice(i + 1))
        if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) found.push(`"${a.says}" stands on "${b.says}"`);
    });
    const wires = [...svg.querySelectorAll("line, path")] as SVGGeometryElement[];
    for (const wire of wires) {
      const length = wire.getTotalLength();
      const matrix = wire.getScreenCTM()!;
      const steps = Math.max(2, Math.ceil(length));
      const met = new Set<string>();
      for (let k = 0; k <= steps; k++) {
        const p = wire.getPointAtLength((length * k) / steps).matrixTransform(matrix);
        for (const t of texts) if (p.x > t.left && p.x < t.right && p.y > t.top && p.y < t.bottom) met.add(t.says);
      }
      for (const says of met) found.push(`a line runs through "${says}"`);
    }
    // Text on a fill of its own colour keeps 7:1 in both themes up to about a sixth of that colour.
    for (const shape of svg.querySelectorAll("rect, path, circle")) {
      if (shape.closest("defs, symbol") || getComputedStyle(shape).fill === "none") continue;
      const opacity = Number.parseFloat(getComputedStyle(shape).fillOpacity);
      const r = shape.getBoundingClientRect();
      for (const t of texts)
        if (opacity > 0.17 && t.left < r.right && r.left < t.right && t.top < r.bottom && r.top < t.bottom)
          found.push(`"${t.says}" stands on a dark tone`);
    }
    return found;
  });
}
