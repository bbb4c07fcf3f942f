// Why the plan is the smallest of its kind, in words a reader can check, and what the next best would save or cost.

import { itemAt } from "../../records/index.js";
import { listText } from "../../words/index.js";
import { closedIn, type Demands } from "../demand/demands.js";
import type { Optimality, RunnerUp } from "../types.js";
import { type Candidate, type Candidates, rankOf } from "./design.js";
import { isUniform } from "./sections.js";
import { codesWithin, fewestLines } from "./uniform-contacts.js";

export function optimalityOf(candidate: Candidate, demands: Demands, found: Candidates, someAtHand: boolean): Optimality {
  const { contacts } = candidate;
  const own = demands.cards.filter((c) => c.kind !== "ground").length;
  const ground = contacts.poles - own;
  const words: string[] = [];
  if (own > 0)
    words.push(
      `${own} enable${own === 1 ? " has" : "s have"} points of ${own === 1 ? "its" : "their"} own and take${own === 1 ? "s" : ""} a pole each.`,
    );
  if (isUniform(contacts.sections, contacts.part.positions.length)) words.push(...uniformWords(demands, ground, contacts.lines));
  else if (found.complete)
    words.push(
      `Every assignment of one net to a terminal of ${contacts.part.name} was tried: none needs fewer poles, and none at that number fewer lines.`,
    );
  else words.push(`Not every assignment of nets to the terminals was tried; one with fewer poles or lines may exist.`);
  const scope = someAtHand ? "those at hand first" : "of the parts records";
  const many = (n: number, one: string, more: string) => `${n} ${n === 1 ? one : more}`;
  words.push(`Compared: ${many(found.switches, "switch", "switches")}, ${many(found.devices, "device", "devices")} (${scope}).`);
  return {
    poles: contacts.poles,
    lines: contacts.lines,
    lifted: candidate.works,
    says: words.join(" "),
    proven: found.complete,
    searched: { switches: found.switches, devices: found.devices, candidates: found.ranked.length },
  };
}

function uniformWords(demands: Demands, ground: number, lines: number): string[] {
  const words: string[] = [];
  const low = (m: number) =>
    demands.cards.filter((c, i) => c.kind === "ground" && closedIn(c, itemAt(itemAt(demands.modes, m).on, i))).length;
  const others = demands.versions.length - 1;
  if (ground > 0) {
    const [tightest] = demands.modes
      .map((mode, m) => ({ mode, needs: low(m) + (mode.firmware === demands.versions[0] ? 0 : 1) }))
      .sort((a, b) => b.needs - a.needs);
    words.push(
      ground === tightest?.needs
        ? `${tightest.mode.name} must ground ${tightest.needs} net${tightest.needs === 1 ? "" : "s"} at once, and a pole grounds one at a time: fewer than ${ground} ground pole${ground === 1 ? "" : "s"} cannot do${ground > 1 ? ", unless nets are joined for good, which is not planned here" : ""}.`
        : `With fewer than ${ground} ground poles no number of lines this device has tells the versions apart.`,
    );
  }
  if (lines > 0 && fewestLines(demands, ground, lines - 1) === undefined) {
    words.push(
      lines === 1
        ? `One line at least is needed to tell ${others + 1} versions apart.`
        : `With ${ground} ground pole${ground === 1 ? "" : "s"}, ${lines - 1} line${lines === 2 ? " gives" : "s give"} at most ${codesWithin(lines - 1, ground)} bank${codesWithin(lines - 1, ground) === 1 ? "" : "s"} beside the open one; ${others} ${others === 1 ? "is" : "are"} needed.`,
    );
  }
  return words;
}

/** The best candidate that is smaller in some way; else the next best that is not the same plan with another part. */
export function runnerUpOf(candidate: Candidate, ranked: readonly Candidate[]): { readonly runnerUp?: RunnerUp } {
  const rest = ranked.filter((c) => differs(c, candidate));
  const smaller = rest.filter((c) => saves(c, candidate).length > 0);
  const unlike = rest.filter((c) => c.contacts.poles !== candidate.contacts.poles || c.contacts.lines !== candidate.contacts.lines);
  const next = smaller[0] ?? unlike[0] ?? rest[0];
  if (!next) return {};
  const save = saves(next, candidate);
  const cost = saves(candidate, next);
  const { contacts, fit } = next;
  const name = `${contacts.part.name}${fit ? ` with ${fit.device.name}` : ""}`;
  const words =
    save.length === 0 && cost.length === 0
      ? "does the same at the same price"
      : [save.length > 0 ? `saves ${listText(save)}` : "saves nothing", ...(cost.length > 0 ? [`costs ${listText(cost)}`] : [])].join(
          " and ",
        );
  return {
    runnerUp: {
      says: `${name} ${words}.`,
      switchPart: contacts.part.id,
      ...(fit ? { device: fit.device.id } : {}),
      poles: contacts.poles,
      lines: contacts.lines,
      saves: save,
      costs: cost,
    },
  };
}

function differs(a: Candidate, b: Candidate): boolean {
  return (
    a.contacts.part.id !== b.contacts.part.id ||
    a.fit?.device.id !== b.fit?.device.id ||
    rankOf(a).slice(0, 4).join() !== rankOf(b).slice(0, 4).join()
  );
}

function saves(a: Candidate, b: Candidate): string[] {
  const of = (from: number, to: number, one: string, many: string) =>
    to - from > 0 ? [`${to - from} ${to - from === 1 ? one : many}`] : [];
  return [
    ...of(a.contacts.poles, b.contacts.poles, "pole", "poles"),
    ...of(a.contacts.lines, b.contacts.lines, "bank line", "bank lines"),
    ...of(a.works, b.works, "pin to work on", "pins to work on"),
    ...of(a.toGet, b.toGet, "part to get", "parts to get"),
  ];
}
