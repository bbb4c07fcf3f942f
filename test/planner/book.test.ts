// The pages of the single file with what they repeat kept once: a reader gets what was packed.
import { describe, expect, it } from "vitest";
import { bookOf, pageIn } from "../../src/planner/single-file/book.js";

const mark = '<svg xmlns="http://www.w3.org/2000/svg" class="vm">\n<path d="M0 0"/></svg>';
const nested = `<svg width="3"><g>${mark}</g></svg>`;

describe("the book of the single file", () => {
  it.each([
    ["one drawing on two pages", { "a.html": `<p>${mark}</p>`, "b.html": `${mark}${mark}` }, 1],
    ["a drawing in a drawing", { "a.html": `<p>${nested}</p>${mark}` }, 2],
    ["text that looks like a place, as pages write it", { "a.html": `&lt;again 0&gt; ${mark}` }, 1],
    ["a dollar sign in a drawing", { "a.html": '<svg class="a">$& $1 $$</svg>' }, 1],
    ["a drawing in a list of reasons", { "a.html": `<div class="reasons"><p>${mark}</p></div>${mark}` }, 2],
    ["none", { "a.html": "<p>plain</p>" }, 0],
  ])("gives back what was packed: %s", (_, contents, kept) => {
    const pages = Object.fromEntries(Object.entries(contents).map(([name, content]) => [name, ["Title", content] as const]));
    const book = JSON.parse(JSON.stringify(bookOf(pages))) as ReturnType<typeof bookOf>;
    expect(book.repeated).toHaveLength(kept);
    for (const [name, page] of Object.entries(pages)) expect(pageIn(book, name)).toEqual(page);
  });

  it("has no page of another name, an object's own names among them", () => {
    const book = bookOf({ "a.html": ["A", ""] });
    expect([pageIn(book, "b.html"), pageIn(book, "constructor")]).toEqual([undefined, undefined]);
  });
});
