// The build sheet of a switched machine: the rows of wiring's sheet, the drawings of the plan, and the machine they go into.
// Also the honest other case: a machine that no wiring can be handed out for, with the reasons and the ways out.

import { labelCopies } from "../catalogue/index.js";
import {
  addressMap,
  bankMap,
  connectorFace,
  devicePins,
  layOutPanel,
  panelDxf,
  panelTemplate,
  railBars,
  slotPlan,
  switchBack,
  switchWiring,
} from "../drawing/index.js";
import { fillBuild } from "../machine/index.js";
import { type Combination, judgeRunning, plan as planBuild } from "../planning/index.js";
import { type Build, itemAt } from "../records/index.js";
import { type BuildSheet, buildSheet } from "../sheet/index.js";
import { type BestWiring, type Face, planWiring, type WiringPlan, wiringOptions } from "../wiring/index.js";
import { bestSentence, betterSentence, runnerUpSentence } from "../words/index.js";
import { asksOf } from "./asks.js";
import { bestBuilt } from "./best-built.js";
import { type ChangeOverView, changeOverView } from "./change-over.js";
import { type Context, head, type LinkView, type MarkView, markOf, type PageHead, recordLink } from "./common.js";
import { machineDrawings } from "./machine-drawings.js";
import { type Figure, figure } from "./marks.js";

export interface FaceView {
  readonly title: string;
  readonly figure: Figure;
}

export interface PanelView {
  /** Full size; left out when a hole is not known. */
  readonly svg?: string;
  /** The same for a machine, as the address of a download. */
  readonly dxf?: string | undefined;
  readonly problems: readonly string[];
}

export interface SheetPage extends PageHead {
  readonly mark: MarkView;
  /** Id of the build it is of. */
  readonly of: string;
  /** Of the board. */
  readonly revision: string;
  readonly build?: LinkView | undefined;
  /** Why this combination, and what the next best would save and cost. */
  readonly why: readonly string[];
  readonly sheet: BuildSheet;
  /** The switch from its solder side. */
  readonly backDrawing: Figure;
  readonly switchDrawing: Figure;
  readonly bankDrawing?: Figure | undefined;
  readonly pinDrawings: readonly FaceView[];
  readonly faces: readonly FaceView[];
  readonly panel: PanelView;
  readonly slotDrawing?: Figure | undefined;
  readonly memoryDrawing?: Figure | undefined;
  readonly portDrawing?: Figure | undefined;
  readonly railDrawing?: Figure | undefined;
  readonly changeOver?: ChangeOverView | undefined;
}

/** Why there is no sheet, in words. */
export interface NoSheet {
  readonly says: string;
  readonly reasons: readonly string[];
  readonly waysOut: readonly string[];
}

export type SheetResult = { readonly kind: "sheet"; readonly page: SheetPage } | { readonly kind: "none"; readonly why: NoSheet };

const noSheet = (says: string, reasons: readonly string[] = [], waysOut: readonly string[] = []): SheetResult => ({
  kind: "none",
  why: { says, reasons, waysOut },
});

/** The sheet for the best combination of a build, or for the one given; where that one cannot be wired and another can, for the other. */
export function sheetOf(catalogue: Context["catalogue"], build: Build, given?: Combination): SheetResult {
  const answer = planBuild(catalogue, build, { brief: true });
  if (answer.kind !== "answer") return noSheet(answer.faults.map((f) => f.says).join(" "));
  const best = bestBuilt(catalogue, [{ build, told: answer.combinations }]);
  const wiring =
    given && planWiring(catalogue, given, wiringOptions(build, { judge: (combination) => judgeRunning(catalogue, combination) }));
  if (given && wiring?.kind === "wiring")
    return { kind: "sheet", page: sheetView(catalogue, build, given, wiring.plan, givenText(catalogue, given, best)) };
  if (wiring?.kind === "not-needed") return noSheet(wiring.says);
  const built = best?.kind === "best" ? best.wiring : undefined;
  if (built?.kind === "not-needed") return noSheet(built.says);
  if (best?.kind === "best" && built?.kind === "wiring") {
    const instead = wiring?.kind === "refused" ? [`Another combination than the one asked for, which cannot be wired: ${wiring.says}`] : [];
    const why = [...instead, bestSentence(best), runnerUpSentence(best, namesOf(catalogue, best.combination))].filter(
      (text) => text !== "",
    );
    return { kind: "sheet", page: sheetView(catalogue, build, best.combination, built.plan, why) };
  }
  const refused = wiring ?? (best?.kind === "refused" ? best : undefined);
  if (refused?.kind !== "refused") return noSheet(answer.says);
  return noSheet(
    refused.says,
    refused.reasons.map((r) => r.says),
    refused.waysOut.map((w) => w.says),
  );
}

/** Of a combination that was asked for: whether another asks less. */
function givenText(catalogue: Context["catalogue"], given: Combination, best: BestWiring | undefined): readonly string[] {
  if (best?.kind !== "best" || asksSame(given, best.combination)) return best?.kind === "best" ? [bestSentence(best)] : [];
  return [`Asked for as it is. ${betterSentence(best, given, namesOf(catalogue, given))}`];
}

/** The two differ in slots and settings alone. */
function asksSame(one: Combination, other: Combination): boolean {
  const key = ({ revision, modes, cards }: Combination) => JSON.stringify([revision, modes, cards.map((c) => [c.as, c.revision])]);
  return key(one) === key(other);
}

function namesOf(catalogue: Context["catalogue"], { cards }: Combination): (as: string) => string {
  const labels = labelCopies(cards, (id) => catalogue.cards.get(id)?.name ?? id);
  return (as) => labels.get(as) ?? as;
}

function sheetView(
  catalogue: Context["catalogue"],
  build: Build,
  combination: Combination,
  plan: WiringPlan,
  why: readonly string[],
): SheetPage {
  const sheet = buildSheet(catalogue, combination, plan, build.name);
  const id = `sheet-${build.id}`;
  const { device } = plan;
  const part = device && catalogue.parts.get(device.part);
  const machine = machineDrawings(catalogue, combination, { stands: build.stands });
  const says = `What to get, set, burn and wire for ${build.name}, and what must be seen on the bench.`;
  return {
    ...head(`builds/${build.id}-sheet.html`, `Build sheet: ${build.name}`, says, "builds"),
    of: build.id,
    revision: combination.revision,
    mark: markOf(combination.verdict, combination.evidence, { kind: "answer", asks: asksOf(fillBuild(build, combination)) }),
    build: catalogue.builds.has(build.id) ? recordLink(catalogue, "build", build.id) : undefined,
    why,
    sheet,
    backDrawing: figure((prefix, width) => switchBack(plan, prefix, width), `${id}-back`),
    switchDrawing: figure((prefix, width) => switchWiring(plan, prefix, width), `${id}-switch`),
    bankDrawing: device && figure((prefix, width) => bankMap({ ...plan, device }, prefix, width), `${id}-banks`),
    pinDrawings:
      device && part?.type === "memory"
        ? device.sockets.map(({ socket }) => ({
            title: `Device in ${socket}`,
            figure: figure(
              (prefix, width) =>
                devicePins(
                  {
                    family: part.family,
                    socket,
                    package: part.package,
                    pins: part.pins,
                    lines: plan.lines,
                    work: plan.pinWork.filter((w) => w.socket === socket),
                    resistors: plan.pullUps.flatMap(({ id: name, from }) =>
                      from.at === "device" && from.socket === socket ? [{ pin: from.pin, name }] : [],
                    ),
                  },
                  prefix,
                  Math.min(width, pinsWide),
                ),
              `${id}-pins-${socket}`,
            ),
          }))
        : [],
    faces: plan.connectors.flatMap((c) =>
      seenOnce(c.faces).map((face, i) => ({
        title: `${c.id}, ${c.name}: ${face.says}`,
        // What each contact carries stands beside the first; the others show where it lies.
        figure: figure((prefix, width) => connectorFace(c, face, prefix, Math.min(width, faceWide), i === 0), `${id}-${c.id}-${i}`),
      })),
    ),
    panel: panelView(sheet, id),
    slotDrawing: machine && figure((prefix, width) => slotPlan(machine.slots, prefix, width), `${id}-slots`),
    memoryDrawing: machine && figure((prefix, width) => addressMap(machine.memory, prefix, width), `${id}-memory`),
    portDrawing: machine && figure((prefix, width) => addressMap(machine.ports, prefix, width), `${id}-ports`),
    railDrawing: machine && figure((prefix, width) => railBars(machine.rails, prefix, width), `${id}-rails`),
    changeOver: changeOverView(catalogue, build, combination),
  };
}

/** Three beside one another on paper. */
const faceWide = 258;
/** Room for a note and a resistor on either side. */
const pinsWide = 510;

/** A face and its solder side are the same picture where every contact lies alike; then it is drawn once, under both names. */
function seenOnce(faces: readonly Face[]): readonly Face[] {
  const drawn: Face[] = [];
  for (const face of faces) {
    const same = drawn.findIndex((d) => d.half === face.half && JSON.stringify(d.contacts) === JSON.stringify(face.contacts));
    if (same < 0) drawn.push(face);
    else drawn[same] = { ...itemAt(drawn, same), says: `${itemAt(drawn, same).says}; so also the ${face.seen}` };
  }
  return drawn;
}

function panelView(sheet: BuildSheet, id: string): PanelView {
  if (sheet.panel.length === 0) return { problems: [] };
  const panel = layOutPanel(sheet.panel);
  if (panel.kind === "refused") return { problems: panel.problems };
  return {
    svg: panelTemplate(panel, `${id}-panel`),
    dxf: `data:image/vnd.dxf;charset=us-ascii,${encodeURIComponent(panelDxf(panel))}`,
    problems: [],
  };
}

/** One page for each build of the club that is run in more than one mode and can be wired. */
export function sheetPages(ctx: Context): readonly SheetPage[] {
  return [...ctx.catalogue.builds.values()].flatMap((build) => {
    if ((build.modes ?? []).length < 2) return [];
    const result = sheetOf(ctx.catalogue, build);
    return result.kind === "sheet" ? [result.page] : [];
  });
}
