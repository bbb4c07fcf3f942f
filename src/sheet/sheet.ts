// The build sheet as rows of text: what to get, how to set, where to put, what to burn, which wires to tick, what must be seen.
// It words what the plan says and decides nothing; drawings and the page around it are made elsewhere.
import { type Catalogue, labelCopies } from "../catalogue/index.js";
import { isRecorded, laneText } from "../images/index.js";
import type { Combination } from "../planning/index.js";
import { type Firmware, hex, known, sizeText, unknown } from "../records/index.js";
import { type Fault, type FaultGroup, panelParts, type WiringPlan } from "../wiring/index.js";
import { findingOf } from "./finding-words.js";
import { cautionsOfToday, deviceChecksum, orderOfWork } from "./first-page.js";
import { hazardRows } from "./hazards.js";
import type { BuildSheet, BurnSheet, SheetFault, SheetJumper } from "./types.js";

const thin = "\u2009";
const runWords = { board: "inside", cable: "cable", jumper: "link" } as const;

export function buildSheet(catalogue: Catalogue, combination: Combination, plan: WiringPlan, title: string): BuildSheet {
  const labels = labelCopies(combination.cards, (card) => catalogue.cards.get(card)?.name ?? card);
  const nameOf = (as: string) => labels.get(as) ?? as;
  const jumpers = jumpersOf(catalogue, combination, nameOf);
  return {
    title,
    machine: `${plan.boardName}, revision ${plan.revision}`,
    verdict: combination.verdict,
    evidence: combination.evidence,
    cautions: plan.cautions,
    today: cautionsOfToday(plan),
    order: orderOfWork(plan, jumpers.length),
    toDo: plan.toDo,
    conditions: combination.conditions.map((c) => [c.says, ...c.ways.slice(0, 1).map((w) => w.says)].map(sentence).join(" ")),
    unknowns: combination.unknowns.map(({ says, how }) => ({ says, how })),
    // What no record names nobody can have noted as at hand.
    parts: plan.parts.map(({ part, name, count, use, atHand }) => ({
      name,
      count,
      use,
      atHand: part === undefined ? "look" : atHand ? "yes" : "to get",
    })),
    alsoNeeded: combination.alsoNeeded.map((n) => `${nameOf(n.as)}: ${n.says}`),
    slots: combination.cards.map((c) => ({ slot: c.slot, card: nameOf(c.as), revision: c.revision, freedom: c.freedom })),
    jumpers,
    pinWork: plan.pinWork.map(({ says, why }) => ({ says, why })),
    burn: burnSheet(plan, catalogue.firmware.get(plan.firmwareFamily)),
    contacts: plan.contacts.map((row) => ({
      position: row.position,
      mode: plan.modes.find((m) => m.id === row.mode)?.name ?? row.mode,
      joined: row.joined.map(([a, b]) => `${a} to ${b}`).join(", ") || "none",
      levels: row.levels.map((l) => `${l.line} ${l.level}`).join(", "),
      version: row.version,
      on:
        row.cards
          .filter((c) => c.state === "on")
          .map((c) => nameOf(c.card))
          .join(", ") || "none",
    })),
    wires: plan.wires.map((w) => ({
      number: w.number,
      label: w.label,
      from: w.fromText,
      to: w.toText,
      run: w.conductor === undefined ? runWords[w.run] : `${runWords[w.run]} ${w.conductor}`,
      current: w.current_mA === "unknown" ? "not known" : `${Number(w.current_mA.toFixed(2))}${thin}mA`,
    })),
    pullUps: plan.pullUps.map((r) => r.says),
    proof: plan.proof.says,
    unsafe: plan.proof.unsafe.map(({ says, cure }) => ({ says, cure })),
    hazards: hazardRows(plan),
    checks: plan.electrical.checks.map(({ says, ok }) => ({ says, state: ok === "unknown" ? "not known" : ok ? "holds" : "fails" })),
    bench: benchRows(plan),
    finding: findingOf(plan),
    faults: plan.faults.groups.map(faultRow),
    faultsSay: `${plan.faults.says} Every measurement: power off, device and cards out. Wires found swapped are exchanged back, open ones soldered again, bridges taken away.${plan.doubleFaults.groups.length > 0 ? " Two swaps of throws at once stand on the page, not on paper." : ""}`,
    silentFaults: plan.faults.silent.map((f) => brief(f)),
    ...(plan.faults.suggestion ? { suggestion: suggestionText(plan.faults.suggestion) } : {}),
    doubleFaults: plan.doubleFaults.groups.map((g) => ({ seen: g.says, causes: g.faults.map((f) => brief(f)) })),
    doubleFaultsSay: `Two swaps of throws at once: what is seen, and which they are. ${plan.doubleFaults.says} Put one right, look again, then the other.`,
    evidenceNotes: combination.rests.map((r) => r.says),
    nearMatches: combination.nearMatches.map((n) => `${catalogue.builds.get(n.build)?.name ?? n.build}: ${n.differs}`),
    panel: panelParts(catalogue, plan),
    notes: plan.notes,
  };
}

function jumpersOf(catalogue: Catalogue, combination: Combination, nameOf: (as: string) => string): SheetJumper[] {
  return combination.cards.flatMap((placed) => {
    const card = catalogue.cards.get(placed.card);
    return Object.entries(placed.settings).map(([id, position]): SheetJumper => {
      const setting = card?.settings?.find((s) => s.id === id);
      return {
        card: nameOf(placed.as),
        setting: setting === undefined ? id : `${id} (${setting.name})`,
        position,
        how: setting?.positions.find((p) => p.id === position)?.how,
      };
    });
  });
}

function burnSheet(plan: WiringPlan, family: Firmware | undefined): BurnSheet | undefined {
  const { device } = plan;
  if (!device) return undefined;
  const crcOf = (version: string) => {
    const image = family?.versions.find((v) => v.id === version)?.image;
    const crc = known(image?.crc32);
    if (crc !== unknown) return crc;
    return isRecorded(image) ? "not recorded; another checksum is" : "no checksum recorded: not checked";
  };
  return {
    device: device.name,
    grade:
      device.grade === unknown
        ? "the fastest grade; how fast it must be is not known"
        : `${device.grade.marking} (${device.grade.access_ns}${thin}ns) or faster`,
    sockets: device.sockets.map((s) => (s.lane === "whole" ? s.socket : `${s.socket}: ${laneText({ ...s, width: device.width })}`)),
    banks: plan.banks.map((bank) => ({
      bank: bank.index,
      offset: hex(bank.offset, 5),
      size: sizeText(bank.size),
      version: bank.version,
      repeats: Math.max(1, bank.repeats / (device.sockets[0]?.part?.of ?? 1)),
      crc32: crcOf(bank.version),
      positions: plan.contacts
        .filter((c) => c.bank === bank.index)
        .map((c) => c.position)
        .join(", "),
      note: bank.use === "safe" ? "no position: filled for safety" : bank.use === "copy" ? "a further copy" : "",
    })),
    fill: "FF",
    checksum: deviceChecksum(plan, family),
  };
}

function sentence(says: string): string {
  return /[.?]$/.test(says) ? says : `${says}.`;
}

/** Labels stand in the table of wires already; here they would bury the numbers. */
function brief({ says, short }: Fault): string {
  return short ?? says;
}

/** What to do about these stands above the table, once for all. */
const mendedAlike = new Set<Fault["kind"]>(["wires-swapped", "throws-swapped", "wire-open", "contacts-bridged", "terminals-bridged"]);

function suggestionText({ says, distinct, alone }: NonNullable<WiringPlan["faults"]["suggestion"]>): string {
  return `${says} That makes ${distinct} different things to be seen, ${alone} of them from one fault alone.`;
}

function faultRow(group: FaultGroup): SheetFault {
  const place = (id: string) => group.faults.findIndex((f) => f.id === id) + 1;
  const numbers = (ids: readonly string[]) =>
    ids
      .map(place)
      .sort((x, y) => x - y)
      .join(", ");
  return {
    seen: group.says,
    mayLookRight: group.mayLookRight,
    twins: group.twins.map(numbers),
    causes: group.faults.map((f) => (mendedAlike.has(f.kind) ? brief(f) : `${brief(f)}: ${f.fix}`)),
    tellApart: group.measurements.map((m) => ({
      measure: m.short,
      outcomes: m.outcomes.map((o) => ({
        sees: o.sees,
        causes: numbers(o.faults),
      })),
    })),
  };
}

/** Wire after wire stands in the table of wires with a box for the measurement; the step only points there. */
function benchRows(plan: WiringPlan): WiringPlan["benchTest"] {
  return plan.benchTest.map((step) =>
    step.stage === "continuity" && step.expect.length > 3 && step.expect.every((e) => e.position === undefined)
      ? { ...step, expect: [{ see: "Every wire of the table below 1 ohm; tick it there under Measured." }] }
      : step,
  );
}
