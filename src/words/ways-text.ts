// Ways to run a machine, in words: what is wanted, what is on in which way and under which firmware, and why fewer ways cannot do. Takes the
// data of planning by its shape; `nameOf` tells what a copy of a card is called.
import { capital, countText, listText } from "./text.js";

type NameOf = (as: string) => string;

interface WishShape {
  readonly kind: "card" | "together" | "always" | "alone";
  readonly id: string;
  readonly card?: string;
  readonly cards?: readonly string[];
  readonly firmware?: string;
}

interface AgainstShape {
  readonly ways: number;
  readonly wishes: readonly string[];
  readonly choices: readonly { readonly says: string }[];
}

type FewerShape =
  | { readonly kind: "one-way" }
  | { readonly kind: "apart"; readonly wishes: readonly string[] }
  | { readonly kind: "searched"; readonly against: AgainstShape }
  | { readonly kind: "not-proven"; readonly ways: number; readonly because: "unknown-facts" | "budget" };

interface WayShape {
  readonly own: readonly string[];
  readonly on: readonly string[];
  readonly firmware: string;
}

interface WaysShape {
  readonly outcome: "found" | "perhaps" | "none" | "stopped";
  readonly wishes: readonly WishShape[];
  readonly fewest?: number;
  readonly tooMany: boolean;
  readonly fewer?: FewerShape;
  readonly against?: AgainstShape;
}

/** "Tallow bus tracer", "disk and tape together under R5.1", "clock always on", "tracer by itself". */
export function wishText(wish: WishShape, nameOf: NameOf): string {
  const name = nameOf(wish.card ?? "");
  switch (wish.kind) {
    case "card":
      return name;
    case "always":
      return `${name} always on`;
    case "alone":
      return `${name} by itself`;
    case "together": {
      const cards = listText((wish.cards ?? []).map(nameOf));
      const under = wish.firmware === undefined ? "" : `under ${wish.firmware}`;
      if (cards === "") return `a way ${under}`;
      return [cards, (wish.cards ?? []).length > 1 ? "together" : "", under].filter((word) => word !== "").join(" ");
    }
    default:
      return wish.kind satisfies never;
  }
}

const listed = (ids: readonly string[], wishes: readonly WishShape[], nameOf: NameOf) =>
  listText(wishes.filter((w) => ids.includes(w.id)).map((w) => wishText(w, nameOf)));

/** How many ways it takes, or that no number of them does. */
export function waysSentence({ outcome, fewest = 0, tooMany, wishes, against }: WaysShape, nameOf: NameOf): string {
  const much = tooMany ? " That is more than you would put up with." : "";
  switch (outcome) {
    case "found":
      return `${fewest === 1 ? "One way to run it is enough: all that is wanted can be on at once." : `It takes ${countText(fewest, "way")} to run it, with one switch.`}${much}`;
    case "perhaps":
      return `${fewest === 1 ? "One way to run it may be enough" : `${capital(countText(fewest, "way"))} to run it, with one switch, may do`}: missing facts decide.${much}`;
    case "stopped":
      return "How many ways it takes is not known: the search was stopped before it came to an end.";
    case "none":
      return `No number of ways grants it. ${against ? againstText(against, wishes, nameOf) : ""}`.trim();
    default:
      return outcome satisfies never;
  }
}

function againstText({ wishes: ids, choices }: AgainstShape, wishes: readonly WishShape[], nameOf: NameOf): string {
  const wanted = listed(ids, wishes, nameOf);
  const said = listText(choices.map((c) => c.says));
  if (wanted === "") return said === "" ? "This machine cannot work as its record stands." : `${said}: that cannot be in this machine.`;
  const beside = said === "" ? "" : `, in a machine with ${said}`;
  return `What cannot be granted: ${wanted}${beside}.`;
}

/** Why fewer ways cannot do. */
export function fewerSentence(fewer: FewerShape, wishes: readonly WishShape[], nameOf: NameOf): string {
  switch (fewer.kind) {
    case "one-way":
      return "";
    case "apart": {
      const names = fewer.wishes.map((id) => listed([id], wishes, nameOf));
      return `Fewer cannot do: ${listText(names)} need a way each.`;
    }
    case "searched":
      return `Fewer cannot do: every division into ${countText(fewer.against.ways, "way")} was searched. ${againstText(fewer.against, wishes, nameOf)}`;
    case "not-proven": {
      const why = fewer.because === "budget" ? "the search was stopped before it came to an end" : "missing facts decide";
      return `Whether ${countText(fewer.ways, "way")} would do is not known: ${why}.`;
    }
    default:
      return fewer satisfies never;
  }
}

/** One line: "Two ways and one switch: R4A with tracer; R5.1 with disk and tape." */
export function divisionLine(ways: readonly WayShape[], nameOf: NameOf): string {
  const parts = ways.map(({ own, firmware }) => `${firmware} with ${own.length === 0 ? "no other card on" : listText(own.map(nameOf))}`);
  return `${capital(countText(ways.length, "way"))} and one switch: ${parts.join("; ")}.`;
}
