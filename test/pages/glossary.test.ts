// The page of words: each is on it once, the answers' as the one table of states has them, and each is a word that other pages use.
import { describe, expect, it } from "vitest";
import { glossaryPage } from "../../src/pages/glossary.js";
import { evidenceWords, verdictWords } from "../../src/words/index.js";
import { files, read } from "./site-folder.js";

const words = glossaryPage().groups.flatMap((g) => g.words);

describe("the page of words", () => {
  it("has each word once, at a place of its own", () => {
    expect(words.length).toBeGreaterThan(30);
    expect(new Set(words.map((w) => w.word)).size).toBe(words.length);
    expect(new Set(words.map((w) => w.id)).size).toBe(words.length);
    for (const { word, means } of words) expect(means, word).toMatch(/[.]$/);
  });

  it("says of an answer and what it rests on what the table of states says", () => {
    for (const { word, means } of [...Object.values(verdictWords), ...Object.values(evidenceWords)])
      expect(words.find((w) => w.word === word)?.means, word).toBe(means);
  });

  it("explains no word that no other page uses, and is led to from every page", () => {
    const others = files.filter((name) => name.endsWith(".html") && name !== "words.html" && !name.startsWith("pagefind/"));
    const texts = others.map((name) => read(name).toLowerCase());
    const used = (word: string) => texts.some((text) => text.includes(word.toLowerCase()));
    expect(words.filter(({ word, also = "" }) => ![word, ...also.split(", ")].some(used)).map((w) => w.word)).toEqual([]);
    expect(others.filter((_, i) => !texts[i]!.includes("words.html"))).toEqual([]);
  });
});
