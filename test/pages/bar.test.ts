// The bar over the releases: its stretches, its words, and the letters of its notes.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { barOf, type OnRelease, releasesText } from "../../src/pages/bar.js";
import type { Answer } from "../../src/planning/index.js";
import { evidenceOrder, type Verdict, verdictOrder } from "../../src/words/index.js";

const marks: Readonly<Record<string, Verdict>> = { w: "workable", i: "conditional", "?": "unknown", "-": "ruled-out" };
/** "ww-?" over R1 to R4; after a blank a second family, from H1. */
function over(states: string): OnRelease[] {
  return states.split(" ").flatMap((of, family) =>
    [...of].map((s, at) => ({
      family: `f${family}`,
      version: `${"RH"[family]}${at + 1}`,
      verdict: marks[s]!,
      evidence: "inferred" as const,
    })),
  );
}

describe("the words at the end", () => {
  it.each([
    ["wwww", "any release"],
    ["ww ww", "any release"],
    ["----", "no release"],
    ["--ww", "from R3"],
    ["ww--", "up to R2"],
    ["-w--", "R2 alone"],
    ["-ww-", "R2 to R3"],
    ["ww --", "R1 to R2"],
    ["-www --", "from R2"],
    ["-ww -w", "R2 on, H2"],
    ["-www -ww", "R2 on, H2 on"],
    ["-iw-", "R2 to R3"],
    ["????", "not known"],
    ["-?--", "no or not known"],
    ["??ww", "from R3; else not known"],
    ["-?ww", "from R3; R2 not known"],
    ["", "no release"],
  ])("of %j are %j", (states, says) => expect(releasesText(states === "" ? [] : over(states))).toBe(says));

  it("never call a release that is not known one that works", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom("w", "?", "-"), { minLength: 1, maxLength: 8 }), (states) => {
        const says = releasesText(over(states.join("")));
        if (states.includes("?")) expect(says).toContain("not known");
        if (states.some((s) => s !== "w")) expect(says).not.toBe("any release");
        if (!states.includes("w")) expect(says).toMatch(/^(?:no|not)/);
      }),
    );
  });
});

describe("the bar", () => {
  it("has ink where it works and nowhere else, in stretches that end where a family does", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom("w", "i", "?", "-"), { maxLength: 9 }), fc.nat(9), (states, cut) => {
        const text = [states.slice(0, cut).join(""), states.slice(cut).join("")].filter(Boolean).join(" ");
        const on = text === "" ? [] : over(text);
        const { releases } = barOf(on);
        expect(releases.map((r) => r.version)).toEqual(on.map((o) => o.version));
        let open = false;
        for (const [i, r] of releases.entries()) {
          const inked = "wi".includes(states[i]!);
          if (releases[i - 1]?.family !== r.family) expect(open).toBe(false);
          expect(r.starts).toBe(inked && !open);
          if (inked) open = !r.ends;
          else expect(r.starts || r.ends).toBe(false);
        }
        expect(open).toBe(false);
      }),
    );
  });

  it("gives each note one letter, wherever it stands, and every release on a condition a letter", () => {
    const asks = (says: string, way: string) =>
      ({ combinations: [{ conditions: [{ kind: "loss", says, ways: [{ says: way }] }] }] }) as unknown as Answer;
    const [slow, blind] = [asks("A wait at each start.", "Use R4."), asks("No picture.", "Fit a coil.")];
    const bar = barOf(over("iiww i").map((o, at) => ({ ...o, answer: at === 1 ? blind : slow })));
    expect(bar.releases.map((r) => r.letter)).toEqual(["a", "b", undefined, undefined, "a"]);
    expect(bar.notes).toEqual([
      { letter: "a", text: "A wait at each start. Against it: Use R4." },
      { letter: "b", text: "No picture. Against it: Fit a coil." },
    ]);
    expect(barOf(over("i")).notes).toHaveLength(1);
  });

  it("tells the result in words, and no evidence of a no", () => {
    expect(barOf(over("--ww?")).label).toBe("R1 and R2 no; R3 and R4 works, by the rules alone; R5 not known");
    for (const evidence of evidenceOrder)
      for (const verdict of verdictOrder) {
        const { label } = barOf([{ family: "f", version: "R1", verdict, evidence }]);
        expect(label.includes(",")).toBe(verdict === "workable" || verdict === "conditional");
      }
  });
});
