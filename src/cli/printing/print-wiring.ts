// A wiring plan in a few lines: which device, which switch, what each position gives, and what proves it. The sheet has the rest.
import type { Wiring, WiringPlan } from "../../wiring/index.js";
import { para } from "./terminal.js";

export function wiringText(wiring: Wiring, title: (text: string) => string): readonly string[] {
  if (wiring.kind === "not-needed") return [];
  if (wiring.kind === "wiring") return [title("How it is switched"), ...planLines(wiring.plan)];
  return [
    title("It cannot be wired as asked"),
    para("", wiring.says),
    ...wiring.reasons.map((reason) => para("", `- ${reason.says}`)),
    ...wiring.waysOut.map((way) => para("  ", `way out: ${way.says}`)),
  ];
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
    para("", plan.optimality.says),
    ...(plan.runnerUp ? [para("", `Next best: ${plan.runnerUp.says}`)] : []),
    ...plan.cautions
      .filter((caution) => caution.severity === "stop")
      .map((caution) => para("", `Caution: ${caution.title}. ${caution.text}`)),
  ];
}

function hand(atHand: boolean): string {
  return atHand ? ", at hand" : ", to get";
}
