// Which combination is built, in words: how far it is proven to be the best, and what the next best would save and cost. Takes the data of
// planning and wiring by its shape.
import { must } from "../records/index.js";
import { capital, countText, listText } from "./text.js";

interface DifferenceShape {
  readonly what: "sureness" | "remedies" | "losses" | "notes" | "cards" | "versions" | "evidence" | "toGet" | "poles" | "wires" | "changes";
  readonly by: number;
}

interface CombinationShape {
  readonly revision: string;
  readonly modes: readonly { readonly name: string; readonly firmware: string; readonly enabled: readonly string[] }[];
  readonly cards: readonly { readonly as: string; readonly revision: string }[];
}

interface BuiltShape {
  readonly of: number;
  readonly combination: CombinationShape;
}

interface BestShape extends BuiltShape {
  readonly wiring: { readonly kind: "wiring" | "not-needed" };
  readonly figures: { readonly cards: number; readonly versions: number };
  readonly runnerUp?: BuiltShape & { readonly saves: readonly DifferenceShape[]; readonly costs: readonly DifferenceShape[] };
  readonly compared: number;
  readonly refused: number;
  readonly proven: boolean;
}

type NameOf = (as: string) => string;

/** "Two cards change between the ways, the firmware does not. No combination is better. One combination beside it cannot be wired." */
export function bestSentence({ figures, wiring, compared, refused, proven }: BestShape): string {
  const best = proven
    ? compared === 1
      ? "It is the only one."
      : "No combination is better."
    : `It is the best of ${countText(compared, "combination")} that were compared; there may be a better one.`;
  const impossible = refused === 0 ? "" : `${capital(countText(refused, "combination"))} beside it cannot be wired.`;
  return [wiring.kind === "not-needed" ? "" : changingText(figures), best, impossible].filter((text) => text !== "").join(" ");
}

function changingText({ cards, versions }: BestShape["figures"]): string {
  const some = [...(cards > 0 ? [countText(cards, "card")] : []), ...(versions > 0 ? ["the firmware"] : [])];
  const [only] = some;
  if (some.length === 2) return `${capital(some.join(" and "))} change between the ways.`;
  if (cards === 0) return `${capital(only ?? "nothing")} changes between the ways, the cards do not.`;
  return `${capital(must(only, "what differs"))} ${cards === 1 ? "changes" : "change"} between the ways, the firmware does not.`;
}

/** "Next best: R6 in work and R5.1 in play. It is better proven and costs one pole and two wires." */
export function runnerUpSentence({ of, combination, runnerUp }: BestShape, nameOf: NameOf): string {
  if (!runnerUp) return "";
  const made = runnerUp.of === of ? madeText(runnerUp.combination, combination, nameOf) : waysText(runnerUp.combination, nameOf);
  const [saves, costs] = [runnerUp.saves, runnerUp.costs];
  const is = [...saves.flatMap((d) => isText(d.what, true) ?? []), ...costs.flatMap((d) => isText(d.what, false) ?? [])];
  const counted = (of: readonly DifferenceShape[]) => listText(of.flatMap((d) => amountText(d) ?? []));
  const [less, more] = [counted(saves), counted(costs)];
  const clauses = [...is, ...(less === "" ? [] : [`saves ${less}`]), ...(more === "" ? [] : [`costs ${more}`])];
  return `Next best: ${made}. It ${clauses.length === 0 ? "is as good in all that counts" : listText(clauses)}.`;
}

/** What is otherwise in the best of them than in one that was asked for: "Better by what is compared: R5.1 in every way." */
export function betterSentence({ combination }: Pick<BestShape, "combination">, asked: CombinationShape, nameOf: NameOf): string {
  return `Better, by what must change between the ways, by proof, parts, poles and wires, is: ${madeText(combination, asked, nameOf)}.`;
}

/** What is otherwise in it than in the other. */
function madeText(one: CombinationShape, other: CombinationShape, nameOf: NameOf): string {
  const firmware = (c: CombinationShape) => c.modes.map((m) => m.firmware).join("\n");
  const revisions = one.cards.filter((c) => other.cards.some((o) => o.as === c.as && o.revision !== c.revision));
  const parts = [
    ...(firmware(one) === firmware(other) ? [] : [firmwareText(one)]),
    ...(one.revision === other.revision ? [] : [`board revision ${one.revision}`]),
    ...revisions.map((c) => `${nameOf(c.as)} of revision ${c.revision}`),
  ];
  return parts.length === 0 ? "the same with other slots and settings" : listText(parts);
}

/** "R5.1 in every way", "R6 in work and R5.1 in play". */
export function firmwareText({ modes }: Pick<CombinationShape, "modes">): string {
  const versions = new Set(modes.map((m) => m.firmware));
  return versions.size === 1 ? `${modes[0]?.firmware} in every way` : listText(modes.map((m) => `${m.firmware} in ${m.name}`));
}

/** Another division: what is on under which version. */
function waysText({ modes }: CombinationShape, nameOf: NameOf): string {
  return modes.map((m) => `${m.firmware} with ${listText(m.enabled.map(nameOf)) || "no card on"}`).join("; ");
}

function isText(what: DifferenceShape["what"], better: boolean): string | undefined {
  if (what === "evidence") return better ? "is better proven" : "is less well proven";
  if (what === "sureness") return better ? "hangs on no missing fact" : "hangs on missing facts";
  return undefined;
}

function amountText({ what, by }: DifferenceShape): string | undefined {
  switch (what) {
    case "remedies":
      return countText(by, "remedy to take", "remedies to take");
    case "losses":
      return countText(by, "loss", "losses");
    case "notes":
      return countText(by, "oddity", "oddities");
    case "cards":
      return `${countText(by, "card")} to switch`;
    case "versions":
      return `${countText(by, "firmware version")}`;
    case "toGet":
      return `${countText(by, "part")} to get`;
    case "poles":
      return countText(by, "pole");
    case "wires":
      return countText(by, "wire");
    case "changes":
      return `${countText(by, "change")} to the machine as it stands`;
    default:
      return undefined;
  }
}
