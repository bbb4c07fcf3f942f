// How complete the reasons and the ways out of an answer are, in words: no more is claimed than was tried.
import type { Reason, Repair, RepairsComplete } from "./answer.js";

interface Reasons {
  readonly reasons: readonly Pick<Reason, "moreFacts">[];
  readonly reasonsComplete: boolean;
}

export function reasonsSentence({ reasons, reasonsComplete }: Reasons): string {
  if (!reasonsComplete) return "There may be more reasons.";
  const opened = reasons.map((r) => r.moreFacts);
  if (opened.every((more) => more === "no")) return "These are all the reasons.";
  const all = "Nothing else that was chosen stands in the way";
  if (!opened.includes("unknown")) return `${all}, but more facts do than those named.`;
  return `${all}; whether more facts do than those named was not looked into everywhere.`;
}

interface Repairs {
  readonly repairs: readonly Pick<Repair, "kind">[];
  readonly repairsComplete: RepairsComplete;
}

export function repairsSentence({ repairs, repairsComplete: { givingUp, twoModes, moreModes, ways } }: Repairs): string {
  if (givingUp === "none") return "What would help was not looked for.";
  const choices = {
    all: repairs.length > 0 ? "No other smallest set of choices to give up would help." : "No choice could be given up to make it work.",
    some: repairs.length > 0 ? "Giving up other choices may help as well." : "Not every set of choices to give up was tried.",
    "no-help": "",
  }[givingUp];
  const two = {
    all: "Every way to share the cards out between two modes was tried",
    some: "Not every way to share the cards out between two modes was tried",
    none: "Two modes with a switch were not tried",
    "no-help": "",
  }[twoModes];
  const more = moreModes === "none" ? "three modes or more were not" : "";
  const modes =
    twoModes === "all" ? [two, more].filter(Boolean).join("; ") : [two, more && "nor were three modes or more"].filter(Boolean).join(", ");
  const switched = repairs.some((r) => r.kind === "ways");
  const several = {
    all: switched ? "No fewer ways with a switch would do." : "No number of ways with a switch would help.",
    some: switched ? "Other ways with a switch may help as well." : "Whether a switch would help is not known.",
    none: "Ways with a switch were not tried.",
    "no-help": "",
  }[ways];
  return [choices, modes && `${modes}.`, several].filter(Boolean).join(" ");
}
