// Makes the build sheet of one way: the site's own sheet for a switched machine; for any other the machine, its cards and settings,
// drawings, cautions and steps at the bench.
import { h } from "preact";
import { renderToStaticMarkup } from "preact-render-to-string";
import { Sheet } from "../../../templates/parts/Sheet.js";
import { type Catalogue, labelCopies } from "../../catalogue/index.js";
import { addressMap, railBars, slotPlan } from "../../drawing/index.js";
import { listText, machineDrawings, sheetOf as switchedSheet } from "../../pages/index.js";
import type { Combination } from "../../planning/index.js";
import { type Build, sizeText } from "../../records/index.js";
import { cautions } from "../../wiring/index.js";
import type { NoSwitch, SheetDrawing, SheetStep, SheetTable, SheetView } from "./sheet-view.js";

/** Cautions every sheet opens with. */
const always = ["mains-inside", "power-off-to-switch", "esd", "tantalum", "battery"];

/** Of the combination named; else of the one that is best to build. */
export function sheetOf(catalogue: Catalogue, build: Build, named?: Combination): SheetView {
  const titled = (board: string, revision: string) => `${build.name}: ${catalogue.boards.get(board)?.name ?? board}, revision ${revision}`;
  const title = named ? titled(named.board, named.revision) : build.name;
  if (named && named.modes.length < 2) return plainSheet(catalogue, build, named, title);
  const made = switchedSheet(catalogue, build, named);
  if (made.kind === "sheet")
    return { kind: "switched", title: titled(build.board, made.page.revision), html: renderToStaticMarkup(h(Sheet, { view: made.page })) };
  if (named) return plainSheet(catalogue, build, named, title, made.why);
  return { kind: "plain", title, noSwitch: made.why, cautions: [], tables: [], drawings: [], bench: [] };
}

function plainSheet(catalogue: Catalogue, build: Build, combination: Combination, title: string, noSwitch?: NoSwitch): SheetView {
  return {
    kind: "plain",
    title,
    noSwitch,
    cautions: cautions.filter((c) => always.includes(c.id)).map((c) => ({ title: c.title, says: c.text, stop: c.severity === "stop" })),
    tables: [machineTable(catalogue, combination), ...cardTables(catalogue, combination), ...dueTable(catalogue, combination)],
    drawings: drawingsOf(catalogue, build, combination),
    bench: benchOf(catalogue, combination),
  };
}

function nameOf(catalogue: Catalogue, combination: Combination, as: string): string {
  return labelCopies(combination.cards, (card) => catalogue.cards.get(card)?.name ?? card).get(as) ?? as;
}

function machineTable(catalogue: Catalogue, c: Combination): SheetTable {
  const family = catalogue.firmware.get(c.firmwareFamily)?.name ?? c.firmwareFamily;
  const rows = [
    { head: "Board", cells: [catalogue.boards.get(c.board)?.name ?? c.board] },
    { head: "Revision", cells: [c.revision] },
    ...(c.memory ? [{ head: "Memory", cells: [sizeText(c.memory)] }] : []),
    ...c.modes.map((m) => ({
      head: c.modes.length > 1 ? m.name : "Firmware",
      cells: [
        `${family} ${m.firmware}${c.modes.length > 1 ? `; on: ${listText(m.enabled.map((as) => nameOf(catalogue, c, as))) || "no card"}` : ""}`,
      ],
    })),
  ];
  return { title: "The machine", heads: ["", ""], rows, ticks: false };
}

function cardTables(catalogue: Catalogue, c: Combination): SheetTable[] {
  if (c.cards.length === 0) return [];
  const rows = c.cards.map((p) => ({
    head: nameOf(catalogue, c, p.as),
    cells: [p.revision || "any", p.slot, p.freedom],
  }));
  const settings = c.cards.flatMap((p) =>
    Object.entries(p.settings).map(([id, at]) => {
      const setting = catalogue.cards.get(p.card)?.settings?.find((s) => s.id === id);
      const how = setting?.positions.find((x) => x.id === at)?.how ?? "";
      return { head: nameOf(catalogue, c, p.as), cells: [id, setting?.name ?? "", at, how] };
    }),
  );
  return [
    { title: "Cards and slots", heads: ["Card", "Revision", "Slot", "It may stand in"], rows, ticks: true },
    ...(settings.length > 0
      ? [{ title: "Settings", heads: ["Card", "Setting", "What it sets", "Position", "How"], rows: settings, ticks: true }]
      : []),
  ];
}

function dueTable(catalogue: Catalogue, c: Combination): SheetTable[] {
  const rows = [
    ...c.changes.map((x) => ({ head: "To change or get", cells: [x] })),
    ...c.alsoNeeded.map((n) => ({ head: "To have", cells: [`${nameOf(catalogue, c, n.as)}: ${n.says}`] })),
    ...c.conditions.map((k) => ({
      head: k.kind === "loss" ? "What is lost" : k.kind === "cosmetic" ? "Good to know" : k.kind === "to-get" ? "To get" : "To do",
      cells: [[k.says, ...k.ways.map((w) => `${w.says} (${w.costs})`)].join(" ")],
    })),
    ...c.unknowns.map((u) => ({ head: "To find out", cells: [`${u.says} ${u.how}`] })),
  ];
  return rows.length === 0 ? [] : [{ title: "To do before the first power", heads: ["", ""], rows, ticks: true }];
}

function drawingsOf(catalogue: Catalogue, build: Build, c: Combination): SheetDrawing[] {
  const machine = machineDrawings(catalogue, c, { stands: build.stands });
  if (!machine) return [];
  const both = (title: string, draw: (prefix: string, width: number) => string, prefix: string): SheetDrawing => ({
    title,
    narrow: draw(`${prefix}-n`, 330),
    wide: draw(`${prefix}-w`, 640),
  });
  return [
    both("Slots", (p, w) => slotPlan(machine.slots, p, w), "sheet-slots"),
    both("Memory addresses", (p, w) => addressMap(machine.memory, p, w), "sheet-memory"),
    both("Port addresses", (p, w) => addressMap(machine.ports, p, w), "sheet-ports"),
    both("Supply rails", (p, w) => railBars(machine.rails, p, w), "sheet-rails"),
  ];
}

/** Steps for a machine without a switch. */
function benchOf(catalogue: Catalogue, c: Combination): SheetStep[] {
  if (c.modes.length > 1) return [];
  const mode = c.modes[0];
  const names = c.cards.map((p) => nameOf(catalogue, c, p.as));
  return [
    {
      power: "off",
      does: "Power off, plug out, wait until the supply has run down. Set every jumper and switch of the list above.",
      expect: [],
    },
    { power: "off", does: "Fit the firmware, notch the right way round, and the cards in their slots.", expect: [] },
    {
      power: "on",
      does: "Power on and watch the start.",
      expect: [`${catalogue.firmware.get(c.firmwareFamily)?.name ?? "the firmware"} ${mode?.firmware ?? ""} shows itself`],
    },
    ...names.map((n): SheetStep => ({ power: "on", does: `Use the ${n}.`, expect: ["it answers"] })),
    { power: "on", does: "Leave it on for an hour and use it once more.", expect: ["nothing has changed, nothing is hot"] },
  ];
}
