// An answer as a person at the bench reads it: the sentence, how sure, the combinations, the reasons, the way out.
import type { Catalogue } from "../../catalogue/index.js";
import type { WayOutCost } from "../../pages/index.js";
import {
  type Answer,
  type Combination,
  type Condition,
  type PlacedCard,
  type Reason,
  type Ref,
  reasonsSentence,
  repairsSentence,
  type UnknownFact,
} from "../../planning/index.js";
import { itemAt, sizeText } from "../../records/index.js";
import { costCells, costHeads, evidenceWords, takenText, thenText, verdictWords } from "../../words/index.js";
import { para, styled, type Terminal, wrapped } from "./terminal.js";

/** Turns a record reference into file:line:column, or undefined when the record is not in a file. */
export type PlaceOf = (ref: Ref) => string | undefined;

export interface AnswerOptions {
  /** Boards and firmware families by the names people use. */
  readonly catalogue: Pick<Catalogue, "boards" | "firmware">;
  readonly placeOf: PlaceOf;
  readonly terminal: Pick<Terminal, "colour">;
  /** Every combination in full; else the first in full and the others by what differs from it. */
  readonly full?: boolean | undefined;
  /** What each way out costs, cheapest first. */
  readonly costs?: readonly WayOutCost[];
}

export function answerText(answer: Answer, options: AnswerOptions): string {
  const { placeOf, terminal, full, costs = [] } = options;
  const title = (text: string) => styled(terminal, "bold", text);
  const out: string[] = [title(wrapped(answer.says, 96, "")), ""];
  const best = answer.combinations[0];
  out.push(`Verdict: ${verdictWords[answer.verdict].word} (${answer.verdict})`);
  if (best && answer.verdict !== "ruled-out")
    out.push(para("", `Evidence: ${evidenceWords[best.evidence].word} (${best.evidence}). ${evidenceWords[best.evidence].means}`));
  out.push(`Combinations: ${answer.exact ? "" : "at least "}${answer.count} certain${hanging(answer)}`);
  const modeName = (id: string) => best?.modes.find((m) => m.id === id)?.name ?? id;
  const taken = takenText(answer.taken, (as) => as, modeName);
  if (taken !== undefined) out.push(para("", taken));
  for (const [i, combination] of answer.combinations.entries()) {
    const lines =
      i === 0 || full || !best ? combinationLines(combination, i + 1, options, title) : differingLines(combination, best, i + 1, title);
    out.push("", ...lines);
  }
  if (answer.reasons.length > 0) out.push("", title("Why not"), ...answer.reasons.flatMap((reason) => reasonLines(reason, placeOf)));
  if (answer.reasons.length > 0) out.push(para("", reasonsSentence(answer)));
  if (answer.repairs.length > 0 || answer.reasons.length > 0) {
    out.push("", title("What would help"));
    for (const repair of answer.repairs) {
      out.push(para("", `- ${repair.says}`));
      out.push(para("  ", thenText(repair)));
    }
    out.push(para("", repairsSentence(answer)));
  }
  if (costs.length > 1) out.push("", title("What each costs"), ...costLines(costs));
  if (answer.unknowns.length > 0) out.push("", title("Not known"), ...answer.unknowns.flatMap((fact) => unknownLines(fact, placeOf, "")));
  if (answer.history.length > 0) {
    out.push("", title("Looked at, counts for nothing here"));
    for (const fact of answer.history) out.push(para("", `- ${fact.says}${places(fact.refs, placeOf)}`));
  }
  return out.join("\n");
}

/** In columns, each as wide as its widest cell; below it the way out itself. */
function costLines(costs: readonly WayOutCost[]): string[] {
  const rows = [costHeads, ...costs.map(costCells)];
  const widths = costHeads.map((_, at) => Math.max(...rows.map((row) => itemAt(row, at).length)));
  const lines = rows.map((row) => `  ${row.map((cell, at) => cell.padEnd(itemAt(widths, at))).join("  ")}`.trimEnd());
  return [...lines, ...costs.flatMap((c) => (c.impossible === undefined ? [] : [para("  ", `No switch can do it: ${c.impossible}`)]))];
}

function reasonLines(reason: Reason, placeOf: PlaceOf): string[] {
  const chosen = reason.choices.length > 0 ? [para("  ", `Chosen: ${reason.choices.map((choice) => choice.says).join("; ")}`)] : [];
  const facts = reason.facts.map((fact) => para("  ", `because ${fact.says}${places(fact.refs, placeOf)}`));
  return [
    para("", `- ${reason.says}`),
    ...chosen,
    ...facts,
    ...(reason.moreFacts === "yes" ? ["  Other facts rule this out as well."] : []),
  ];
}

function hanging(answer: Answer): string {
  if (answer.hanging === "0") return answer.hangingExact ? "" : "; others may hang on facts nobody knows yet";
  return `; ${answer.hangingExact ? "" : "at least "}${answer.hanging} more hang on facts nobody knows yet`;
}

function combinationLines(
  c: Combination,
  number: number,
  { placeOf, catalogue }: AnswerOptions,
  title: (text: string) => string,
): string[] {
  const board = catalogue.boards.get(c.board)?.name ?? c.board;
  const family = catalogue.firmware.get(c.firmwareFamily)?.name ?? c.firmwareFamily;
  const machine = `${board} revision ${c.revision}${c.memory ? `, ${sizeText(c.memory)} of memory` : ""}, ${family}`;
  const lines = [title(`${number}. ${machine}: ${verdictWords[c.verdict].word}, evidence ${c.evidence}`)];
  for (const mode of c.modes) {
    const on = mode.enabled.length === 0 ? "no card on" : mode.enabled.join(", ");
    lines.push(
      para(
        "   ",
        `mode ${mode.name === mode.id || mode.name === "" ? mode.id : `${mode.id} (${mode.name})`}: firmware ${mode.firmware}; ${on}`,
      ),
    );
  }
  const named = c.cards.map((card) => (card.as === card.card ? card.as : `${card.as} (${card.card})`));
  const width = Math.max(0, ...named.map((name) => name.length));
  for (const [i, card] of c.cards.entries()) lines.push(`   ${named[i]?.padEnd(width)}  ${cardText(card)}`);
  for (const condition of c.conditions) lines.push(...conditionLines(condition, placeOf));
  for (const fact of c.unknowns) lines.push(...unknownLines(fact, placeOf, "   "));
  for (const { as, says, refs } of c.alsoNeeded) lines.push(para("   ", `needed besides, for ${as}: ${says}${places(refs, placeOf)}`));
  if (c.changes.length > 0) lines.push(para("   ", `to change: ${c.changes.join("; ")}`));
  for (const note of c.rests) lines.push(para("   ", `rests on: ${note.grade} (${note.link}): ${note.says}${places(note.refs, placeOf)}`));
  for (const near of c.nearMatches) lines.push(para("   ", `near: tested build ${near.build} differs: ${near.differs}`));
  const rails = c.headroom.map((rail) => `${rail.rail} ${figure(rail.used_A)} of ${figure(rail.limit_A)} A`);
  if (rails.length > 0) lines.push(para("   ", `power: ${rails.join(", ")}; spare slots: ${c.spareSlots}`));
  if (c.switched) lines.push("   needs a switch: the modes differ in what must change");
  return lines;
}

/** A further combination told by what differs from the first. */
function differingLines(c: Combination, first: Combination, number: number, title: (text: string) => string): string[] {
  const says: string[] = [];
  if (c.revision !== first.revision) says.push(`revision ${c.revision}`);
  if (c.memory !== first.memory && c.memory !== undefined) says.push(`${sizeText(c.memory)} of memory`);
  for (const [i, mode] of c.modes.entries()) {
    if (mode.firmware !== first.modes[i]?.firmware) says.push(`mode ${mode.id} with firmware ${mode.firmware}`);
  }
  for (const [i, card] of c.cards.entries()) {
    const other = first.cards[i];
    const differs: string[] = [];
    if (card.revision !== other?.revision && card.revision !== "") differs.push(`revision ${card.revision}`);
    if (card.slot !== other?.slot) differs.push(`slot ${card.slot}`);
    for (const [setting, position] of Object.entries(card.settings)) {
      if (other?.settings[setting] !== position) differs.push(`${setting}=${position}`);
    }
    if (differs.length > 0) says.push(`${card.as} ${differs.join(" ")}`);
  }
  const was = new Set(first.conditions.map((condition) => condition.says));
  const more = c.conditions.filter((condition) => !was.has(condition.says)).map((condition) => para("   ", `if: ${condition.says}`));
  const lacking = c.unknowns.map((fact) => para("   ", `not known: ${fact.says}`));
  const sure =
    c.verdict === first.verdict && c.evidence === first.evidence ? "" : `: ${verdictWords[c.verdict].word}, evidence ${c.evidence}`;
  return [
    title(`${number}. As 1${sure}`),
    para("   ", `but ${says.length > 0 ? says.join("; ") : "with another price"}`),
    ...more,
    ...lacking,
  ];
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
  const ways = condition.ways.map((way) => para("     ", `- ${way.says} (${way.costs}${way.part ? `, part ${way.part}` : ""})`));
  return [para("   ", `${word}: ${condition.says}${places(condition.refs, placeOf)}`), ...ways];
}

function unknownLines(fact: UnknownFact, placeOf: PlaceOf, indent: string): string[] {
  return [para(indent, `not known: ${fact.says}${places(fact.refs, placeOf)}`), para(`${indent}  `, `find out: ${fact.how}`)];
}

function places(refs: readonly Ref[], placeOf: PlaceOf): string {
  const told = [...new Set(refs.map((ref) => placeOf(ref) ?? `${ref.kind}/${ref.id}`))];
  return told.length === 0 ? "" : ` (${told.join(", ")})`;
}
