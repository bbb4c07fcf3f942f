// Ways to run a machine, in words: what is wanted, what is on in which way and under which firmware, and why fewer ways cannot do. Takes the
// data of planning by its shape; `nameOf` tells what a copy of a card is called.
import { capital, countText, listText, rangeText } from "./text.js";

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
  readonly on: readonly string[];
  readonly firmware: string;
  /** Versions it may run. */
  readonly versions: readonly string[];
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

/** One line: "Two ways and one switch: R4 or R4A with tracer; R5.1 with disk and tape." */
export function divisionLine(ways: readonly WayShape[], nameOf: NameOf): string {
  return `${capital(countText(ways.length, "way"))} and one switch: ${partsText(ways, versionsText, nameOf)}.`;
}

/** Most versions that a line names. */
const mostVersions = 3;

function versionsText({ firmware, versions }: Pick<WayShape, "firmware" | "versions">): string {
  if (versions.length === 0) return firmware;
  if (versions.length <= mostVersions) return listText(versions, "or");
  return `${versions[0]}, ${versions[1]} or ${versions.length - 2} other versions`;
}

/** "R4 with tracer; R5.1 with disk and tape; clock in every way": what is on in some ways only, then what is on in all. */
function partsText<W extends { readonly on: readonly string[] }>(ways: readonly W[], under: (way: W) => string, nameOf: NameOf): string {
  const everywhere = (ways[0]?.on ?? []).filter((as) => ways.every((way) => way.on.includes(as)));
  const parts = ways.map((way) => {
    const own = way.on.filter((as) => !everywhere.includes(as));
    const none = everywhere.length > 0 ? "no other card" : "no card on";
    return `${under(way)} with ${own.length === 0 ? none : listText(own.map(nameOf))}`;
  });
  return [...parts, ...(everywhere.length > 0 ? [`${listText(everywhere.map(nameOf))} in every way`] : [])].join("; ");
}

interface HandShape {
  readonly ways: readonly { readonly firmware: string; readonly on: readonly string[] }[];
  readonly changes: readonly { readonly steps: readonly unknown[] }[];
}

/** One line: "Changed over by hand, four things to do each time: R4 with tracer; R5.1 with disk and tape." */
export function byHandLine({ ways, changes }: HandShape, nameOf: NameOf): string {
  const things = rangeText(
    changes.map(({ steps }) => steps.length - 2),
    "thing",
  );
  return `${capital(countText(ways.length, "way"))} changed over by hand, ${things} to do each time: ${partsText(ways, (way) => way.firmware, nameOf)}.`;
}
