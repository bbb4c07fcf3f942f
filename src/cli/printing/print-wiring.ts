// A wiring plan in a few lines: which device, which switch, what each position gives, and what proves it. The sheet has the rest.
import { hazardRows } from "../../sheet/index.js";
import type { SingleVersion, WiringPlan } from "../../wiring/index.js";
import { bestSentence, countText, firmwareText, runnerUpSentence } from "../../words/index.js";
import type { BuiltMachine } from "../reading/wiring-for.js";
import { para } from "./terminal.js";

export function builtText(built: BuiltMachine, nameOf: (as: string) => string, title: (text: string) => string): readonly string[] {
  if (built.kind === "refused") {
    const { why } = built;
    return [
      title("A switch is needed, and none can be built as asked"),
      para("", "Each way runs by itself; without a switch the change from one to another is made by hand."),
      para("", why.says),
      ...(why.refused > 1 ? [para("", triedText(why))] : []),
      ...why.reasons.map((reason) => para("", `- ${reason.says}`)),
      ...why.waysOut.map((way) => para("  ", `way out: ${way.says}`)),
    ];
  }
  const { best, number } = built;
  const chosen = `Combination ${number}: ${firmwareText(best.combination)}. ${bestSentence(best)}`;
  const next = runnerUpSentence(best, nameOf);
  const told = [para("", chosen), ...(next === "" ? [] : [para("", next)])];
  if (best.wiring.kind === "not-needed") return [title("No switch is needed"), ...told];
  return [title("How it is switched"), ...told, ...planLines(best.wiring.plan)];
}

/** The device of a machine whose firmware no switch chooses: what is to be done to its pins, or why it does not go in. */
export function deviceText(single: SingleVersion | undefined, title: (text: string) => string): readonly string[] {
  if (!single) return [];
  if (single.kind === "refused")
    return [
      "",
      title("The device does not do"),
      ...single.reasons.map(({ says }) => para("", says)),
      ...single.waysOut.map(({ says }) => para("  ", `way out: ${says}`)),
    ];
  return [
    "",
    title("The device"),
    para("", single.device.says),
    ...single.pinWork.map((work) => para("  ", `to do: ${work.says} ${work.why}`)),
  ];
}

function triedText({ refused, proven }: { readonly refused: number; readonly proven: boolean }): string {
  return `${countText(refused, "combination")} were tried, and no switch can do any of them${proven ? "; there are no others" : "; others were not tried"}.`;
}

/** What is built, as programs read it. */
export function builtJson(built: BuiltMachine | undefined): object {
  if (!built) return {};
  if (built.kind === "refused") {
    const { refused, proven, ...wiring } = built.why;
    return { wiring, built: { refused, proven } };
  }
  const { best, number } = built;
  const { figures, runnerUp, compared, refused, proven, wiring } = best;
  const says = bestSentence(best);
  return { wiring, built: { combination: number, says, figures, ...(runnerUp ? { runnerUp } : {}), compared, refused, proven } };
}

function planLines(plan: WiringPlan): string[] {
  const nameOf = (version: string, cards: readonly string[]) => `firmware ${version}; on: ${cards.join(", ") || "no card"}`;
  const used = plan.contacts.map((row) => {
    const on = row.cards.filter((card) => card.state === "on").map((card) => card.card);
    return para("  ", `position ${row.position}: ${row.mode}, ${nameOf(row.version, on)}`);
  });
  const device = plan.device;
  return [
    ...(device
      ? [para("", `Device: ${device.name} in ${device.sockets.map((s) => s.socket).join(" and ")}${hand(device.atHand)}. ${device.says}`)]
      : []),
    para("", `Switch: ${plan.switch.name}, ${plan.switch.polesUsed} of ${plan.switch.poles} poles used${hand(plan.switch.atHand)}`),
    ...used,
    ...plan.pinWork.map((work) => para("  ", `to do: ${work.says}`)),
    para("", `${plan.wires.length} wires. ${plan.proof.says}`),
    ...hazardRows(plan).map(({ says, why, after }) => para("  ", `after ${after}: ${says}. ${why}`)),
    para("", plan.optimality.says),
    ...(plan.runnerUp ? [para("", `Other parts: ${plan.runnerUp.says}`)] : []),
    ...plan.cautions
      .filter((caution) => caution.severity === "stop")
      .map((caution) => para("", `Caution: ${caution.title}. ${caution.text}`)),
  ];
}

function hand(atHand: boolean): string {
  return atHand ? ", at hand" : ", to get";
}
