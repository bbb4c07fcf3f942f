// Two ways side by side: only the lines in which they differ.

import type { Combination } from "../../planning/index.js";
import { itemAt } from "../../records/index.js";
import { evidenceWords, verdictWords } from "../../words/index.js";
import { type AppContext, cardName, useApp } from "./app-context.js";
import { headOf } from "./how.js";

interface Line {
  readonly what: string;
  readonly one: string;
  readonly other: string;
}

function traitsOf(app: AppContext, c: Combination): Map<string, string> {
  const lines = new Map<string, string>([
    ["Answer", verdictWords[c.verdict].word],
    ["How sure", evidenceWords[c.evidence].word],
    ["Revision of the board", c.revision],
    ["Memory", c.memory ? `${c.memory / 1024}K` : ""],
  ]);
  for (const m of c.modes) lines.set(c.modes.length > 1 ? `Firmware, ${m.name}` : "Firmware", m.firmware);
  for (const p of c.cards) {
    const name = cardName(app, p.as);
    // By the rules alone two slots that are as free are no difference; what was tested was tested in its own.
    lines.set(`${name}, slot`, c.evidence === "inferred" ? p.freedom : `${p.slot} (by the rules alone ${p.freedom})`);
    if (p.revision) lines.set(`${name}, revision`, p.revision);
    for (const [id, at] of Object.entries(p.settings)) lines.set(`${name}, ${id}`, at);
  }
  lines.set("What to do, or what is lost", c.conditions.map((k) => k.says).join(" "));
  lines.set("Not known", c.unknowns.map((u) => u.says).join(" "));
  lines.set("To change or to get", c.changes.join("; ") || "nothing");
  lines.set("Slots left over", String(c.spareSlots));
  return lines;
}

export function differences(app: AppContext, one: Combination, other: Combination): Line[] {
  const [a, b] = [traitsOf(app, one), traitsOf(app, other)];
  return [...new Set([...a.keys(), ...b.keys()])]
    .map((what) => ({ what, one: a.get(what) ?? "", other: b.get(what) ?? "" }))
    .filter((l) => l.one !== l.other);
}

export function Compare({ ways, numbers }: { ways: readonly Combination[]; numbers: readonly number[] }) {
  const app = useApp();
  const [first, second] = [...numbers].sort((a, b) => a - b) as [number, number];
  const [one, other] = [itemAt(ways, first - 1), itemAt(ways, second - 1)];
  const lines = differences(app, one, other);
  return (
    <div class="compare">
      <h3>
        Combinations {first} and {second}, where they differ
      </h3>
      <table class="list">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">
              {first}. {headOf(one)}
            </th>
            <th scope="col">
              {second}. {headOf(other)}
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((l) => (
            <tr key={l.what}>
              <th scope="row">{l.what}</th>
              <td data-label={`Combination ${first}`}>{l.one || "\u2013"}</td>
              <td data-label={`Combination ${second}`}>{l.other || "\u2013"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
