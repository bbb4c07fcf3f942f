// An answer as a person at the bench reads it: the sentence, how sure, the combinations, the reasons, the way out.
import type { Answer, Combination, Condition, EvidenceNote, PlacedCard, Ref, UnknownFact } from "../planning/index.js";
import { sizeText } from "../records/index.js";
import { styled, type Terminal, wrapped } from "./terminal.js";

/** Words of the verdicts and grades of evidence, the same on pages and here. */
export const verdictWord = { workable: "works", conditional: "works if", "ruled-out": "no", unknown: "not known" } as const;
export const evidenceWord = {
  bench: "a dated bench test covers it",
  documented: "a maker's or club's paper says so",
  reported: "somebody said so",
  inferred: "the rules find nothing against it; nobody has tried",
} as const;

/** Turns a record reference into file:line:column, or undefined when the record is not in a file. */
export type PlaceOf = (ref: Ref) => string | undefined;

export function answerText(answer: Answer, placeOf: PlaceOf, terminal: Pick<Terminal, "colour">): string {
  const title = (text: string) => styled(terminal, "bold", text);
  const out: string[] = [title(wrapped(answer.says, 96, "")), ""];
  const best = answer.combinations[0];
  out.push(`Verdict: ${verdictWord[answer.verdict]} (${answer.verdict})`);
  if (best && answer.verdict !== "ruled-out") out.push(`Evidence: ${best.evidence}: ${evidenceWord[best.evidence]}`);
  out.push(`Combinations: ${answer.exact ? "" : "at least "}${answer.count} certain${hanging(answer)}`);
  for (const [i, combination] of answer.combinations.entries()) out.push("", ...combinationLines(combination, i + 1, placeOf, title));
  if (answer.reasons.length > 0) {
    out.push("", title("Why not"));
    for (const reason of answer.reasons) {
      out.push(`- ${wrapped(reason.says, 94, "  ")}`);
      if (reason.choices.length > 0) out.push(`  Chosen: ${reason.choices.map((choice) => choice.says).join("; ")}`);
      for (const fact of reason.facts) out.push(`  because ${wrapped(fact.says, 86, "    ")}${places(fact.refs, placeOf)}`);
      if (reason.moreFacts) out.push("  Other facts rule this out as well.");
    }
    out.push(answer.reasonsComplete ? "These are all the reasons." : "There are more reasons.");
  }
  if (answer.repairs.length > 0) {
    out.push("", title("What would help"));
    for (const repair of answer.repairs) {
      out.push(`- ${wrapped(repair.says, 94, "  ")}`);
      out.push(`  then: ${verdictWord[repair.verdict]}, ${repair.count} combination${repair.count === "1" ? "" : "s"}`);
    }
    out.push(answer.repairsComplete ? "These are all the smallest changes." : "There are more ways.");
  }
  if (answer.unknowns.length > 0) out.push("", title("Not known"), ...answer.unknowns.flatMap((fact) => unknownLines(fact, placeOf, "")));
  if (answer.history.length > 0) {
    out.push("", title("Looked at, counts for nothing here"));
    for (const fact of answer.history) out.push(`- ${wrapped(fact.says, 94, "  ")}${places(fact.refs, placeOf)}`);
  }
  return out.join("\n");
}

function hanging(answer: Answer): string {
  if (answer.hanging === "0" && answer.hangingExact) return "";
  return `; ${answer.hangingExact ? "" : "at least "}${answer.hanging} more hang on facts nobody knows yet`;
}

function combinationLines(c: Combination, number: number, placeOf: PlaceOf, title: (text: string) => string): string[] {
  const machine = `${c.board} revision ${c.revision}${c.memory ? `, ${sizeText(c.memory)} of memory` : ""}, ${c.firmwareFamily}`;
  const lines = [title(`${number}. ${machine}: ${verdictWord[c.verdict]}, evidence ${c.evidence}`)];
  for (const mode of c.modes) {
    const on = mode.enabled.length === 0 ? "no card on" : mode.enabled.join(", ");
    lines.push(
      `   mode ${mode.name === mode.id || mode.name === "" ? mode.id : `${mode.id} (${mode.name})`}: firmware ${mode.firmware}; ${on}`,
    );
  }
  const width = Math.max(0, ...c.cards.map((card) => card.as.length));
  for (const card of c.cards) lines.push(`   ${card.as.padEnd(width)}  ${cardText(card)}`);
  for (const condition of c.conditions) lines.push(...conditionLines(condition, placeOf));
  for (const fact of c.unknowns) lines.push(...unknownLines(fact, placeOf, "   "));
  if (c.changes.length > 0) lines.push(`   to change: ${wrapped(c.changes.join("; "), 84, "     ")}`);
  for (const note of c.rests) lines.push(...restLines(note, placeOf));
  for (const near of c.nearMatches) lines.push(`   near: tested build ${near.build} differs: ${wrapped(near.differs, 80, "     ")}`);
  const rails = c.headroom.map((rail) => `${rail.rail} ${figure(rail.used_A)} of ${figure(rail.limit_A)} A`);
  if (rails.length > 0) lines.push(`   power: ${rails.join(", ")}; spare slots: ${c.spareSlots}`);
  if (c.switched) lines.push("   needs a switch: the modes differ in what must change");
  return lines;
}

function figure(value: number | "unknown"): string {
  return value === "unknown" ? "unknown" : String(Math.round(value * 1000) / 1000);
}

function cardText(card: PlacedCard): string {
  const settings = Object.entries(card.settings).map(([setting, position]) => `${setting}=${position}`);
  const revision = card.revision === "" ? "" : `revision ${card.revision}, `;
  return `${revision}slot ${card.slot} (${card.freedom})${settings.length > 0 ? `; set ${settings.join(" ")}` : ""}`;
}

function conditionLines(condition: Condition, placeOf: PlaceOf): string[] {
  const word = { remedy: "if", loss: "with a loss", cosmetic: "note", "to-get": "to get" }[condition.kind];
  const lines = [`   ${word}: ${wrapped(condition.says, 84, "     ")}${places(condition.refs, placeOf)}`];
  for (const way of condition.ways)
    lines.push(`     - ${wrapped(way.says, 82, "       ")} (${way.costs}${way.part ? `, part ${way.part}` : ""})`);
  return lines;
}

function restLines(note: EvidenceNote, placeOf: PlaceOf): string[] {
  return [`   rests on: ${note.grade} (${note.link}): ${wrapped(note.says, 76, "     ")}${places(note.refs, placeOf)}`];
}

function unknownLines(fact: UnknownFact, placeOf: PlaceOf, indent: string): string[] {
  return [
    `${indent}not known: ${wrapped(fact.says, 84, `${indent}  `)}${places(fact.refs, placeOf)}`,
    `${indent}  find out: ${wrapped(fact.how, 80, `${indent}    `)}`,
  ];
}

function places(refs: readonly Ref[], placeOf: PlaceOf): string {
  const told = [...new Set(refs.map((ref) => placeOf(ref) ?? `${ref.kind}/${ref.id}`))];
  return told.length === 0 ? "" : ` (${told.join(", ")})`;
}
