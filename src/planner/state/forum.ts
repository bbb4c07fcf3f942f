// The build and its answer as plain text for a forum post or a letter: lines that need no markup and break nowhere.
import { cardsOn, cardsOnOrOff, copyName, labelCopies, modesOf } from "../../catalogue/index.js";
import type { Answer, Combination } from "../../planning/index.js";
import { type Build, bytes, type Mode, sizeText } from "../../records/index.js";
import { evidenceWords, noticeText, verdictWords } from "../../words/index.js";

/** Name of a record by "kind/id". */
export type NameOf = (key: string) => string;

export function forumText(build: Build, answer: Answer, name: NameOf, address: string): string {
  const revision = build.revision === undefined ? "revision not known" : `revision ${[build.revision].flat().join(" or ")}`;
  const memory = build.memory === undefined ? "" : `, ${sizeText(bytes(build.memory))}`;
  const best = answer.combinations[0];
  const calls = labelCopies(build.cards, (card) => name(`card/${card}`));
  const several = modesOf(build).length > 1;
  const onIn = (mode: Mode) =>
    cardsOn(build.cards, mode)
      .map((c) => calls.get(copyName(c)))
      .join(", ") || "no card";
  const openIn = (mode: Mode) => {
    const open = cardsOnOrOff(build.cards, mode).map((c) => calls.get(copyName(c)));
    return open.length > 0 ? `; on or off: ${open.join(", ")}` : "";
  };
  const notice = noticeText({ unread: answer.unread, errors: [] });
  const lines = [
    `Machine: ${name(`board/${build.board}`)}, ${revision}${memory}`,
    ...build.cards.map((c) => `Card: ${calls.get(copyName(c)) ?? c.card}${chosen(c)}`),
    ...(build.modes ?? []).map(
      (m) =>
        `${several ? `Way to run it, ${m.name ?? m.id}` : "Firmware"}: ${m.firmware ?? "open"}${several || m.cards ? `; on: ${onIn(m)}${openIn(m)}` : ""}`,
    ),
    "",
    `Answer: ${verdictWords[answer.verdict].word}${best && answer.verdict !== "ruled-out" ? `, ${evidenceWords[best.evidence].word}` : ""}. ${answer.says}`,
    ...(best ? bestLines(best, calls) : []),
    ...answer.reasons.flatMap((r) => ["", `Why not: ${r.says}`]),
    ...(answer.repairs.length > 0 ? ["", ...answer.repairs.map((r) => `Would help: ${r.says}`)] : []),
    ...answer.unknowns.map((u) => `Not known: ${u.says} To find out: ${u.how}`),
    ...(notice === undefined ? [] : ["", notice]),
    "",
    `All of it: ${address}`,
  ];
  return `${lines.join("\n").replaceAll("\u202f", " ").replaceAll("\u2009", " ")}\n`;
}

function chosen(card: Build["cards"][number]): string {
  const pins = [
    card.revision ? `revision ${card.revision}` : "",
    card.slot ? `in ${card.slot}` : "",
    ...Object.entries(card.settings ?? {}).map(([id, at]) => `${id} at ${at}`),
  ].filter(Boolean);
  return pins.length > 0 ? ` (${pins.join(", ")})` : "";
}

function bestLines(best: Combination, calls: ReadonlyMap<string, string>): string[] {
  const settings = (s: Readonly<Record<string, string>>) =>
    Object.entries(s)
      .map(([id, at]) => `${id} at ${at}`)
      .join(", ");
  return [
    `Best combination: ${[...new Set(best.modes.map((m) => m.firmware))].join(" and ")} on revision ${best.revision}`,
    ...best.cards.map(
      (p) =>
        `  ${calls.get(p.as) ?? p.card}: ${p.slot} (${p.freedom})${Object.keys(p.settings).length > 0 ? `; ${settings(p.settings)}` : ""}`,
    ),
    ...best.conditions.flatMap((c) => [`  To do: ${c.says}`, ...c.ways.map((w) => `    - ${w.says}`)]),
  ];
}
