// The build sheet of a switched machine: the rows of wiring's sheet, the drawings of the plan, and the machine they go into.
// Also the honest other case: a machine that no wiring can be handed out for, with the reasons and the ways out.
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
  switchWiring,
} from "../drawing/index.js";
import { fillBuild } from "../machine/index.js";
import { type Combination, plan as planBuild } from "../planning/index.js";
import type { Build } from "../records/index.js";
import { type BuildSheet, buildSheet, type Face, planWiring, type WiringPlan, wiringOptions } from "../wiring/index.js";
import { asksOf } from "./asks.js";
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
  readonly dxf?: string;
  readonly problems: readonly string[];
}

export interface SheetPage extends PageHead {
  readonly mark: MarkView;
  /** Id of the build it is of. */
  readonly of: string;
  readonly build?: LinkView;
  readonly sheet: BuildSheet;
  readonly switchDrawing: Figure;
  readonly bankDrawing?: Figure;
  readonly pinDrawings: readonly FaceView[];
  readonly faces: readonly FaceView[];
  readonly panel: PanelView;
  readonly slotDrawing?: Figure;
  readonly memoryDrawing?: Figure;
  readonly portDrawing?: Figure;
  readonly railDrawing?: Figure;
  readonly changeOver?: ChangeOverView;
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

/** The sheet for the best combination of a build, or for the one given. */
export function sheetOf(catalogue: Context["catalogue"], build: Build, given?: Combination): SheetResult {
  const combination = given ?? bestOf(catalogue, build);
  if (typeof combination === "string") return noSheet(combination);
  const wiring = planWiring(catalogue, combination, wiringOptions(build));
  if (wiring.kind === "not-needed") return noSheet(wiring.says);
  if (wiring.kind === "refused")
    return noSheet(
      wiring.says,
      wiring.reasons.map((r) => r.says),
      wiring.waysOut.map((w) => w.says),
    );
  return { kind: "sheet", page: sheetView(catalogue, build, combination, wiring.plan) };
}

function bestOf(catalogue: Context["catalogue"], build: Build): Combination | string {
  const answer = planBuild(catalogue, build);
  if (answer.kind !== "answer") return answer.faults.map((f) => f.says).join(" ");
  return answer.combinations[0] ?? answer.says;
}

function sheetView(catalogue: Context["catalogue"], build: Build, combination: Combination, plan: WiringPlan): SheetPage {
  const sheet = buildSheet(catalogue, combination, plan, build.name);
  const id = `sheet-${build.id}`;
  const { device } = plan;
  const part = device && catalogue.parts.get(device.part);
  const machine = machineDrawings(catalogue, combination, { stands: build.stands });
  const says = `What to get, set, burn and wire for ${build.name}, and what must be seen on the bench.`;
  return {
    ...head(`builds/${build.id}-sheet.html`, `Build sheet: ${build.name}`, says, "builds"),
    of: build.id,
    mark: markOf(combination.verdict, combination.evidence, { kind: "answer", asks: asksOf(fillBuild(build, combination)) }),
    build: catalogue.builds.has(build.id) ? recordLink(catalogue, "build", build.id) : undefined,
    sheet,
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
                  },
                  prefix,
                  width,
                ),
              `${id}-pins-${socket}`,
            ),
          }))
        : [],
    faces: plan.connectors.flatMap((c) =>
      seenOnce(c.faces).map((face, i) => ({
        title: `${c.id}, ${c.name}: ${face.says}`,
        figure: figure((prefix, width) => connectorFace(c, face, prefix, width), `${id}-${c.id}-${i}`),
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

/** A face and its solder side are the same picture where every contact lies alike; then it is drawn once, under both names. */
function seenOnce(faces: readonly Face[]): readonly Face[] {
  const drawn: Face[] = [];
  for (const face of faces) {
    const same = drawn.findIndex((d) => d.half === face.half && JSON.stringify(d.contacts) === JSON.stringify(face.contacts));
    if (same < 0) drawn.push(face);
    else drawn[same] = { ...drawn[same]!, says: `${drawn[same]!.says}; so also the ${face.says.replace(/^.*?, /, "")}` };
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
