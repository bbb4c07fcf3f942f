// The plan as a whole: candidates in order of rank, the first that can be wired and simulates to what was planned is handed out.
// Nothing that fails the simulation leaves this file.

import type { Catalogue } from "../catalogue/index.js";
import type { Combination } from "../planning/index.js";
import { itemAt } from "../records/index.js";
import {
  type Called,
  type Candidate,
  type Candidates,
  candidates,
  type Demands,
  demandsOf,
  hasStop,
  optimalityOf,
  runnerUpOf,
  type Sockets,
  socketsOf,
} from "../switching/index.js";
import { benchTest } from "./bench-test/bench-test.js";
import { continuityRows } from "./bench-test/continuity.js";
import { findingRows } from "./bench-test/finding.js";
import type { FaultInput } from "./faults/fault-case.js";
import { faultTable } from "./faults/fault-table.js";
import { singleFaults } from "./faults/faults.js";
import { doubleSwaps } from "./faults/swap-faults.js";
import { bankOf, bankTable, imageRepeats } from "./harness/banks.js";
import { type Harness, loomOf } from "./harness/loom.js";
import { partsList } from "./harness/parts-list.js";
import { currents, electricalOf } from "./harness/sums.js";
import { endKey, endText } from "./harness/wires.js";
import { cautionsOf } from "./report/cautions.js";
import { contactRows, devicePlan, lineTable, pinWorkOf, plannedModes, switchPlanOf } from "./report/describe.js";
import { type BuiltModel, buildModel } from "./simulate/build-model.js";
import { stateJudge } from "./simulate/judged.js";
import { prove } from "./simulate/proof.js";
import type { Bank, FaultTable, WayOut, Wiring, WiringOptions, WiringPlan, WiringReason } from "./types.js";

/** Candidates tried for wires before the search ends. */
const mostTried = 40;

export function planWiring(catalogue: Catalogue, combination: Combination, options: WiringOptions = {}): Wiring {
  const start = prepare(catalogue, combination, options);
  if (start.kind !== "ready") return start;
  const { demands, sockets, repeats, found } = start;
  const supply_V = 5;
  const reasons: WiringReason[] = [];
  const waysOut: WayOut[] = [];
  for (const candidate of found.ranked.slice(0, mostTried)) {
    const loomed = loomOf({ catalogue, combination, candidate, demands, sockets, options, supply_V });
    if (loomed.kind === "refused") {
      reasons.push(...loomed.reasons);
      waysOut.push(...loomed.waysOut);
      continue;
    }
    const banks = sockets ? bankTable(candidate, sockets, demands, repeats) : [];
    const model = buildModel(candidate, loomed.loom, banks, demands, sockets);
    const built = options.judge ? { ...model, judge: stateJudge(model.model, options.judge(combination), alwaysOn(combination)) } : model;
    const hubs = candidate.contacts.uses.flatMap((use, s) => (use ? [itemAt(candidate.contacts.sections, s).hub] : []));
    const proof = prove(built, candidate.contacts.part.transit, hubs, hasStop(candidate.contacts.part));
    if (!proof.holds) {
      reasons.push({ code: "simulation", says: `A wiring with ${candidate.contacts.part.name} was set aside: ${proof.says}`, refs: [] });
      continue;
    }
    const contacts = contactRows(built, candidate, demands);
    const wires = currents(demands, loomed.loom, contacts, options);
    const electrical = electricalOf(candidate, loomed.loom, wires, supply_V);
    const failed = electrical.checks.filter((c) => c.ok === false);
    if (failed.length === 0) {
      const made = { loom: loomed.loom, banks, built, proof, contacts, wires, electrical };
      return { kind: "wiring", plan: finish({ ...start, ...made, catalogue, combination, options, candidate, supply_V }) };
    }
    reasons.push(...failed.map((c): WiringReason => ({ code: "rating", says: c.says, refs: [] })));
    waysOut.push({ says: "Take parts of a higher rating, a shorter cable, or a thicker one." });
  }
  return refused(unique(reasons), unique(waysOut));
}

function alwaysOn({ modes: [first, ...others] }: Combination): string[] {
  return (first?.enabled ?? []).filter((card) => others.every((mode) => mode.enabled.includes(card)));
}

type Ready = {
  readonly kind: "ready";
  readonly demands: Demands;
  readonly sockets?: Sockets;
  readonly repeats: ReadonlyMap<string, number>;
  readonly found: Candidates;
};

function prepare(catalogue: Catalogue, combination: Combination, options: WiringOptions): Ready | Exclude<Wiring, { kind: "wiring" }> {
  const differ = combination.modes.some(
    (mode) =>
      mode.firmware !== itemAt(combination.modes, 0).firmware ||
      [...mode.enabled].sort().join(" ") !== [...itemAt(combination.modes, 0).enabled].sort().join(" "),
  );
  if (combination.modes.length < 2) return { kind: "not-needed", says: "One mode needs no switch." };
  if (!differ) return { kind: "not-needed", says: "All modes run the same firmware with the same cards on: no switch is needed." };
  const board = catalogue.boards.get(combination.board);
  if (!board) return refused([{ code: "no-board", says: `The records hold no board ${combination.board}.`, refs: [] }], []);
  const asked = demandsOf(catalogue, combination, options);
  if (asked.kind === "refused") return refused(asked.reasons, asked.waysOut);
  const { demands } = asked;
  let sockets: Sockets | undefined;
  let repeats: ReadonlyMap<string, number> = new Map();
  if (demands.versions.length > 1) {
    const found = socketsOf(board, combination.revision);
    if ("reason" in found) return refused([found.reason], []);
    sockets = found;
    const family = catalogue.firmware.get(combination.firmwareFamily);
    if (!family) {
      return refused([{ code: "image-unknown", says: `The records hold no firmware ${combination.firmwareFamily}.`, refs: [] }], []);
    }
    const images = imageRepeats(family, demands.versions, sockets);
    if (images.reasons.length > 0)
      return refused(images.reasons, [{ says: "Plan modes with other versions, or find the missing figure out." }]);
    repeats = images.repeats;
  }
  const found = candidates(catalogue, sockets, demands, options);
  if (found.ranked.length === 0) return refused(found.reasons, found.waysOut);
  return { kind: "ready", demands, ...(sockets ? { sockets } : {}), repeats, found };
}

interface FinishInput extends Omit<Ready, "kind"> {
  readonly catalogue: Catalogue;
  readonly combination: Combination;
  readonly options: WiringOptions;
  readonly candidate: Candidate;
  readonly loom: Harness;
  readonly banks: readonly Bank[];
  readonly built: BuiltModel;
  readonly proof: WiringPlan["proof"];
  readonly contacts: WiringPlan["contacts"];
  readonly wires: WiringPlan["wires"];
  readonly electrical: WiringPlan["electrical"];
  readonly supply_V: number;
}

function finish(input: FinishInput): WiringPlan {
  const { catalogue, combination, options, demands, sockets, candidate, loom, banks, built, proof, found, supply_V } = input;
  const { contacts, wires, electrical } = input;
  const atHand = new Set(options.atHand);
  const part = candidate.contacts.part;
  const stop = hasStop(part);
  const device = sockets && candidate.fit ? devicePlan(candidate.fit, sockets, atHand) : undefined;
  const switchPlan = switchPlanOf(candidate, loom, atHand);
  const pinWork = pinWorkOf(candidate, loom);
  // The runner-up is looked for over all parts, also where the owner named some.
  const { device: namedDevice, switch: namedSwitch, ...others } = options.switch ?? {};
  const open = namedDevice || namedSwitch ? candidates(catalogue, sockets, demands, { ...options, switch: others }) : found;
  const faultInput: FaultInput = { built, candidate, loom, banks };
  const singles = options.tables === false ? [] : singleFaults(faultInput);
  const pointName = namer(loom, built, demands.called);
  const bench = benchTest({
    loom,
    built,
    closes: part.closes,
    switchPlan,
    contacts,
    pinWork,
    cards: demands.cards.map((c) => demands.called(c.card)),
    called: demands.called,
    device: device?.name,
    windowed: candidate.fit?.device.technology === "uv-eprom",
    stop,
    supply_V,
  });
  const toDo = [
    ...demands.notes,
    ...loom.notes,
    ...(stop && candidate.contacts.modeAt.includes(undefined)
      ? [`Set the stop ring of the knob to ${candidate.contacts.modeAt.filter((m) => m !== undefined).length} positions.`]
      : []),
    ...pulledNote(proof),
  ];
  const notes = [
    `All bank lines open gives ${itemAt(demands.modes, demands.safest).firmware}, the firmware of ${itemAt(demands.modes, demands.safest).name}: ${demands.safestWhy}.`,
    ...(part.lever ? [part.lever.trim()] : []),
    ...(device ? [partOfDevice(candidate, banks)] : []),
  ].filter((n) => n !== "");
  const cautionIds = new Set(bench.flatMap((s) => s.cautions));
  for (const id of ["solder", "power-off-to-switch", "polarity-first", "esd"]) cautionIds.add(id);
  if (candidate.fit) for (const id of ["vpp", "copyright"]) cautionIds.add(id);
  if (candidate.fit?.device.technology === "uv-eprom") for (const id of ["uv-c", "opaque-label", "over-erase"]) cautionIds.add(id);
  return {
    board: combination.board,
    boardName: catalogue.boards.get(combination.board)?.name ?? combination.board,
    revision: combination.revision,
    firmwareFamily: combination.firmwareFamily,
    modes: plannedModes(candidate, demands),
    ...(device ? { device } : {}),
    banks,
    lines: lineTable(candidate),
    pinWork,
    nets: loom.nets,
    switch: switchPlan,
    contacts,
    wires,
    connectors: loom.connectors,
    cables: loom.cables,
    pullUps: loom.pullUps,
    electrical,
    optimality: optimalityOf(candidate, demands, found, atHand.size > 0),
    ...runnerUpOf(candidate, open.ranked),
    proof,
    benchTest: bench,
    continuity: options.tables === false ? [] : continuityRows(loom, built),
    finding: options.tables === false ? [] : findingRows(built, singles),
    faults: options.tables === false ? noTable : faultTable(built, singles, pointName),
    doubleFaults: options.tables === false ? noTable : faultTable(built, doubleSwaps(faultInput), pointName),
    parts: partsList({ pinWork, catalogue, candidate, device, loom, sockets, atHand, called: demands.called }),
    cautions: cautionsOf([...cautionIds]),
    toDo,
    notes,
  };
}

const noTable: FaultTable = {
  groups: [],
  silent: [],
  faults: 0,
  alone: 0,
  apart: 0,
  distinct: 0,
  says: "The fault table was not asked for.",
};

/** Names of the points a meter can reach. */
function namer(loom: Harness, built: BuiltModel, called: Called): (node: number) => string | undefined {
  const names = new Map<string, string>([
    ["ground", "ground"],
    ["supply", "+5 V"],
  ]);
  for (const path of loom.paths) for (const end of path.machine) names.set(endKey(end), endText(end, called));
  for (const wire of loom.wires) {
    for (const end of [wire.from, wire.to]) names.set(endKey(end), endText(end, called));
  }
  for (const r of loom.pullUps) names.set(endKey(r.from), endText(r.from, called));
  return (node) => names.get(itemAt(built.model.nodes, node));
}

function pulledNote(proof: WiringPlan["proof"]): string[] {
  const states = proof.cases.find((c) => c.kind === "pulled-plug")?.states ?? [];
  return states.map(
    (s) =>
      `${s.mode === undefined ? "Power off before the plug is pulled, and never run it so. " : ""}With the plug pulled: ${s.says}${s.mode === undefined ? ", which is none of the planned modes" : ` (mode ${s.mode})`}.`,
  );
}

function partOfDevice(candidate: Candidate, banks: readonly Bank[]): string {
  const fixed = candidate.lines.filter((use) => use.role !== "switched");
  if (fixed.length === 0) return "";
  const used = banks.filter((_, i) => [...candidate.contacts.versionAt.keys()].some((levels) => bankOf(candidate, levels) === i));
  const how = fixed.map((use) => `${use.fit.line} stays ${use.role === "fixed-high" ? "high" : "low"}`).join(", ");
  return `${how}: the images that are used lie in bank${used.length === 1 ? "" : "s"} ${used.map((b) => b.index).join(", ")} of the device.`;
}

function refused(reasons: readonly WiringReason[], waysOut: readonly WayOut[]): Exclude<Wiring, { kind: "wiring" | "not-needed" }> {
  const [first] = reasons;
  const more = reasons.length > 1 ? ` ${reasons.length - 1} more reason${reasons.length === 2 ? "" : "s"} below.` : "";
  return { kind: "refused", says: `${first?.says ?? "No wiring was found."}${more}`, reasons, waysOut };
}

function unique<T extends { readonly says: string }>(list: readonly T[]): T[] {
  return [...new Map(list.map((item) => [item.says, item])).values()];
}
