// A change-over by hand, step by step, in words. Takes the data of planning by its shape.
import { entryOf } from "../records/index.js";
import { capital, countText, listText, rangeText } from "./text.js";

type NameOf = (as: string) => string;

type StepShape =
  | { readonly kind: "power-off" }
  | { readonly kind: "take-out" | "put-in"; readonly card: string; readonly slot: string }
  | { readonly kind: "move"; readonly card: string; readonly from: string; readonly to: string }
  | { readonly kind: "set"; readonly card: string; readonly setting: string; readonly from?: string; readonly to: string }
  | {
      readonly kind: "switch-off" | "switch-on";
      readonly card: string;
      readonly contact?: { readonly points: readonly string[]; readonly made: "open" | "closed" | "to-on" | "to-off" };
    }
  | { readonly kind: "exchange-firmware"; readonly from: string; readonly to: string }
  | { readonly kind: "power-on"; readonly firmware: string };

/** One thing to do, as an order. */
export function stepText(step: StepShape, nameOf: NameOf): string {
  switch (step.kind) {
    case "power-off":
      return "Switch off and pull the mains plug.";
    case "take-out":
      return `Take ${nameOf(step.card)} out of ${step.slot}.`;
    case "put-in":
      return `Put ${nameOf(step.card)} into ${step.slot}.`;
    case "move":
      return `Move ${nameOf(step.card)} from ${step.from} to ${step.to}.`;
    case "set":
      return `Set ${step.setting} of ${nameOf(step.card)} ${step.from === undefined ? "" : `from ${step.from} `}to ${step.to}.`;
    case "switch-off":
    case "switch-on":
      return `Switch ${nameOf(step.card)} ${step.kind === "switch-on" ? "on" : "off"}: ${contactText(step.contact)}.`;
    case "exchange-firmware":
      return `Exchange the memory device with ${step.from} for the one with ${step.to}.`;
    case "power-on":
      return `Plug in, switch on, and see that ${step.firmware} starts.`;
    default:
      return step satisfies never;
  }
}

function contactText(contact: Extract<StepShape, { kind: "switch-on" | "switch-off" }>["contact"]): string {
  if (!contact) return "its software does that";
  const points = contact.points.length === 0 ? "its enable contact" : `the contact at ${listText(contact.points)}`;
  return { open: `open ${points}`, closed: `close ${points}`, "to-on": `put ${points} over to on`, "to-off": `put ${points} over to off` }[
    contact.made
  ];
}

interface HandShape {
  readonly ways: readonly { readonly verdict: string }[];
  readonly fewestProven: boolean;
  readonly changes: readonly { readonly steps: readonly unknown[] }[];
  readonly stepsProven: boolean;
}

/** How much work it is by hand, and how far that is proven. Switching off and on is not counted. */
export function changeOverSentence({ ways, fewestProven, changes, stepsProven }: HandShape): string {
  if (ways.length === 1) return "By hand nothing has to be changed over: one way is enough.";
  const things = rangeText(
    changes.map(({ steps }) => steps.length - 2),
    "thing",
  );
  const fewer = fewestProven ? "fewer ways cannot do" : "whether fewer ways would do is not known";
  const steps = stepsProven ? "nor fewer things" : "whether with fewer things is not known";
  const unsure = ways.some((w) => w.verdict === "unknown") ? " Whether each of them works hangs on missing facts." : "";
  return `By hand, without a switch: ${countText(ways.length, "way")}, and ${things} to do between two of them. ${capital(fewer)}, ${steps}.${unsure}`;
}

interface WayShape {
  readonly firmware: string;
  readonly on: readonly string[];
  readonly out: readonly string[];
  /** Cards that are in, with where and how. */
  readonly build: {
    readonly cards: readonly {
      readonly card: string;
      readonly as?: string;
      readonly slot?: string;
      readonly settings?: Readonly<Record<string, string>>;
    }[];
  };
}

/** What stands on the card for the lid: the machine in each way, and the steps from each way to each other. */
export interface LidCard {
  readonly ways: readonly { readonly title: string; readonly cards: readonly string[] }[];
  readonly changes: readonly { readonly title: string; readonly steps: readonly string[] }[];
}

interface ChangesShape {
  readonly ways: readonly (WayShape & { readonly id: string })[];
  readonly changes: readonly { readonly from: string; readonly to: string; readonly steps: readonly StepShape[] }[];
}

export function lidCard({ ways, changes }: ChangesShape, nameOf: NameOf): LidCard {
  const titles = new Map(ways.map((way) => [way.id, `${way.firmware} with ${listText(way.on.map(nameOf)) || "no card on"}`]));
  return {
    ways: ways.map((way) => ({ title: entryOf(titles, way.id), cards: standing(way, nameOf) })),
    changes: changes.map(({ from, to, steps }) => ({
      title: `From ${titles.get(from)} to ${titles.get(to)}`,
      steps: steps.map((step) => stepText(step, nameOf)),
    })),
  };
}

/** "Tallow bus tracer in S3, J2 at 300"; "Samphire network card in S5, off"; "Gannet taken out". */
function standing({ build, on, out }: WayShape, nameOf: NameOf): string[] {
  const set = (settings: Readonly<Record<string, string>> = {}) => Object.entries(settings).map(([id, at]) => `, ${id} at ${at}`);
  return [
    ...build.cards.map(({ card, as = card, slot, settings }) =>
      [nameOf(as), slot === undefined ? "" : ` in ${slot}`, ...set(settings), on.includes(as) ? "" : ", off"].join(""),
    ),
    ...out.map((as) => `${nameOf(as)} taken out`),
  ];
}
