// "Yes, if": the act that is asked for, or the loss that is to be borne, not the fault behind it.
import { capital, countText } from "./text.js";

/** What of a condition the sentence needs. */
export interface ConditionFacts {
  readonly kind: "remedy" | "loss" | "cosmetic" | "to-get";
  readonly says: string;
  readonly loss?: { readonly says: string; readonly suspected: boolean };
  /** Ways to meet it, cheapest first. */
  readonly ways: readonly { readonly says: string }[];
}

/**
 * "Yes, if you do this: Solder a pull-up of 10 kilohm from each bank line to +5 at the socket."
 * What must be done comes before what is lost; how many more there are is said, and told beneath.
 */
export function conditionalSentence(conditions: readonly ConditionFacts[]): string {
  const toDo = conditions.filter((c) => c.kind === "remedy");
  const losses = conditions.filter((c) => c.kind === "loss");
  const [act] = toDo;
  const [lost] = losses;
  if (act) {
    const how = act.ways[0]?.says ?? act.says;
    const first = toDo.length > 1 ? `Yes, if you do ${countText(toDo.length, "thing")}, first: ${how}` : `Yes, if you do this: ${how}`;
    const others = act.ways.length - 1;
    const or =
      others > 0
        ? ` ${others === 1 ? "Another way to the same stands" : `${capital(countText(others, "other way"))} to the same stand`} below.`
        : "";
    const also = losses.length > 0 ? ` ${losses.length === 1 ? "A loss is" : "Losses are"} named below.` : "";
    return `${first}${or}${also}`;
  }
  if (lost) {
    const { says, suspected } = lost.loss ?? { says: lost.says, suspected: false };
    const away = lost.ways[0];
    const more =
      losses.length > 1
        ? ` ${losses.length === 2 ? "One more is" : `${countText(losses.length - 1, "more", "more")} are`} named below.`
        : "";
    return `Yes, ${suspected ? "perhaps with a loss" : "with a loss"}: ${says}${away ? ` Against it: ${away.says}` : ""}${more}`;
  }
  return conditions[0] ? `Yes, but first: ${conditions[0].says}` : "Yes, with what is told below.";
}
