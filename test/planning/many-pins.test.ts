// A machine refused in hundreds of ways: the answer comes in seconds, shows the cheapest ways out and says that more exist.
import { expect, it } from "vitest";
import { plan, reasonsSentence, repairsSentence } from "../../src/planning/index.js";
import type { Build } from "../../src/records/index.js";
import { demo } from "../support/demo.js";

it("twenty-one cards pinned slot by slot: the cheapest repairs, each tried, and not complete", () => {
  const catalogue = demo();
  const cards = [...catalogue.cards.keys()].slice(0, 21).map((card, i) => ({ card, slot: `S${(i % 7) + 1}` }));
  const build: Build = { id: "pins", name: "Pins", board: "skerry-24", cards, modes: [{ id: "m", name: "m" }] };
  const answer = plan(catalogue, build, { budget: { steps: 40_000 } });
  if (answer.kind !== "answer") throw new Error("misasked");
  expect(answer.verdict).toBe("ruled-out");
  expect(answer.reasonsComplete || answer.finished).toBe(false);
  expect(answer.repairsComplete.givingUp).toBe("some");
  // Beyond the first dozen, a reason is not opened down to its facts; whether there are others is then not known.
  for (const reason of answer.reasons.slice(12)) expect(reason).toMatchObject({ facts: [], moreFacts: "unknown" });
  expect(reasonsSentence(answer)).toBe("There may be more reasons.");
  expect(repairsSentence(answer)).toContain("Giving up other choices may help as well.");
  // Shortest first, each with the card or pin that cannot be.
  const lengths = answer.reasons.map((r) => r.choices.length);
  expect(lengths.length).toBeGreaterThan(5);
  expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
  const changes = answer.repairs.filter((r) => r.kind === "drop" || r.kind === "change");
  expect(changes.length).toBeGreaterThan(5);
  expect(changes.length).toBeLessThanOrEqual(100);
  for (const repair of answer.repairs) expect(["workable", "conditional", "unknown"]).toContain(repair.verdict);
});
