// One solution told in trade words: where every card stands, what holds it back, what it rests on.
import { allOf, type Catalogue } from "../../catalogue/index.js";
import {
  allowed_nano,
  applies,
  type Compiled,
  changesOf,
  drawn_nano,
  draws,
  eachCard,
  eachMode,
  ofNano,
  ref,
  toGet,
} from "../../encoding/index.js";
import { type Card, itemAt, known, unknown } from "../../records/index.js";
import type { Solution } from "../../solver/index.js";
import { exactTestText } from "../../words/index.js";
import type { AlsoNeeded, Combination, Condition, EvidenceNote, PlacedCard, ToGet, UnknownFact, Verdict } from "./answer.js";
import { evidenceOf, nearMatches, type Proven } from "./evidence.js";
import { conditionalFrom } from "./verdict.js";

/** `freedom` lists per card the slots it may stand in with all else as it is. */
export function combinationOf(
  compiled: Compiled,
  solution: Solution,
  freedom: readonly ReadonlySet<number>[],
  proven: readonly Proven[],
): Combination {
  const { question, frame } = compiled;
  const { board, family } = question;
  const revision = itemAt(question.revisions, itemAt(solution, frame.revision));
  const memory = itemAt(question.memories, itemAt(solution, frame.memory));
  const inPlace = eachCard(frame).filter(({ at }) => itemAt(solution, itemAt(frame.cards, at).slot) < question.slots.length);
  const cards = inPlace.map(({ at, asked }): PlacedCard => {
    const v = itemAt(frame.cards, at);
    const slots = [...(freedom[at] ?? [])]
      .filter((s) => s < question.slots.length)
      .sort((a, b) => a - b)
      .map((s) => itemAt(question.slots, s).id);
    return {
      as: asked.as,
      card: asked.card.id,
      revision: itemAt(asked.revisions, itemAt(solution, v.revision)),
      slot: itemAt(question.slots, itemAt(solution, v.slot)).id,
      settings: Object.fromEntries(asked.settings.map((s, i) => [s.id, itemAt(s.positions, itemAt(solution, itemAt(v.settings, i))).id])),
      slots,
      freedom: freedomWords(question.slots, slots),
    };
  });
  const here = new Set(cards.map((c) => c.as));
  const modes = eachMode(frame).flatMap(({ at, mode }) => {
    const version = question.versions[itemAt(solution, itemAt(frame.firmware, at))];
    return version ? [{ id: mode.id, name: mode.name, firmware: version.id, enabled: [...mode.enabled].filter((as) => here.has(as)) }] : [];
  });
  const conditions = conditionsOf(compiled, solution);
  const unknowns = unknownsOf(compiled, solution);
  const machine = { board: board.id, revision, memory, modes, cards };
  const { grade, rests } = evidenceOf(question, machine, proven);
  const exactTest = exactTestOf(compiled, solution);
  const level = Math.max(0, ...compiled.soft.filter((s) => applies(s, solution)).map((s) => s.level));
  const verdict: Verdict = unknowns.length > 0 ? "unknown" : level >= conditionalFrom ? "conditional" : "workable";
  return {
    verdict,
    evidence: grade,
    ...machine,
    firmwareFamily: family.id,
    conditions,
    unknowns,
    alsoNeeded: inPlace.flatMap(({ asked }) => needsBeside(asked.card, asked.as)),
    ...(exactTest ? { exactTest } : {}),
    rests: exactTest ? [exactTestNote(exactTest), ...rests] : rests,
    nearMatches: nearMatches(question, machine, proven),
    changes: changesOf(frame, solution),
    headroom: headroomOf(compiled, solution, revision),
    spareSlots:
      question.slots.filter((s) => !s.revisions || s.revisions.includes(revision)).length -
      inPlace.reduce((n, { asked }) => n + (asked.card.room.slots ?? 1), 0),
    switched: new Set(modes.map((m) => `${m.firmware}|${[...m.enabled].sort().join(",")}`)).size > 1,
  };
}

export function freedomWords(all: readonly { id: string; edge: string }[], slots: readonly string[]): string {
  if (slots.length === 1) return `only ${slots[0]}`;
  if (slots.length === all.length) return `any of the ${all.length} slots`;
  const edge = all.find((s) => s.id === slots[0])?.edge;
  const same = all.filter((s) => s.edge === edge).map((s) => s.id);
  if (same.length === slots.length && same.every((s) => slots.includes(s))) return `any of ${slots.length} ${edge} slots`;
  return `${slots.slice(0, -1).join(", ")} or ${slots.at(-1)}`;
}

function conditionsOf(compiled: Compiled, solution: Solution): Condition[] {
  const met = compiled.soft.filter((s) => applies(s, solution)).sort((a, b) => b.level - a.level);
  const { catalogue } = compiled.question;
  const lacking = toGet(compiled.frame, solution).map(
    (get): Condition => ({ kind: "to-get", says: `Get ${nameToGet(catalogue, get)}.`, get, ways: [], refs: [ref(get.kind, get.id)] }),
  );
  return [...met.map((s) => s.condition), ...lacking];
}

/** "Skerry Monitor R5.1", "Gannet fixed-disk controller", "2 of Gannet fixed-disk controller". */
export function nameToGet(catalogue: Catalogue, { kind, id, version, count = 1 }: ToGet): string {
  const name = allOf(catalogue, kind).get(id)?.name ?? id;
  return `${count > 1 ? `${count} of ` : ""}${name}${version === undefined ? "" : ` ${version}`}`;
}

/** What the record of a card says it needs beside all that the rules judge. */
export function needsBeside(card: Card, as: string): AlsoNeeded[] {
  return (card.needs?.other ?? []).map((says, at) => ({ as, says, refs: [ref("card", card.id, `/needs/other/${at}`)] }));
}

/** The tested build this solution is, with the facts that were missing and do not matter since it ran. */
function exactTestOf(compiled: Compiled, solution: Solution): Combination["exactTest"] {
  const { exact, unsettled } = compiled;
  const build = exact?.builds[(solution[exact.variable] ?? 0) - 1];
  if (!build?.result) return undefined;
  const notWritten = unsettled
    .filter((u) => !applies(u, solution) && applies({ when: u.missing }, solution))
    .map((u) => ({ says: u.fact.says, how: u.how, refs: u.fact.refs, settles: 0 }));
  return { build: build.id, by: build.result.by, date: build.result.date, notWritten };
}

function exactTestNote(test: NonNullable<Combination["exactTest"]>): EvidenceNote {
  return {
    grade: "bench",
    link: "whole",
    says: exactTestText(test),
    refs: [ref("build", test.build, "/result"), ...test.notWritten.flatMap((u) => u.refs)],
  };
}

export function unknownsOf(compiled: Compiled, solution: Solution): UnknownFact[] {
  return compiled.unsettled
    .filter((u) => applies(u, solution))
    .map((u) => ({ says: u.fact.says, how: u.how, refs: u.fact.refs, settles: 1 }));
}

function headroomOf(compiled: Compiled, solution: Solution, revision: string): Combination["headroom"] {
  const { question, frame } = compiled;
  return question.board.rails
    .filter((r) => !r.revisions || r.revisions.includes(revision))
    .map((r) => {
      const limit = known(r.limit_A);
      const own = known(r.board_A);
      let used: number | "unknown" = own === unknown ? unknown : drawn_nano(own);
      for (const { at, asked } of eachCard(frame)) {
        if (solution[itemAt(frame.cards, at).slot] === question.slots.length) continue;
        const rev = itemAt(asked.revisions, itemAt(solution, itemAt(frame.cards, at).revision));
        for (const d of draws(asked.card, r.rail)) {
          if (d.revisions && !d.revisions.includes(rev)) continue;
          used = used === unknown || d.worst === unknown ? unknown : used + drawn_nano(d.worst);
        }
      }
      return {
        rail: r.rail,
        used_A: used === unknown ? unknown : ofNano(used),
        limit_A: limit === unknown ? unknown : ofNano(allowed_nano(limit, r.derate ?? 1)),
      };
    });
}

/** Refs of a combination's records, for pages that list what an answer rests on. */
export function recordsOf(combination: Combination) {
  return [
    ref("board", combination.board),
    ref("firmware", combination.firmwareFamily),
    ...combination.cards.map((c) => ref("card", c.card)),
  ];
}
