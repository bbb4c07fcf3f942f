// The ways of a machine, as text: how many, why no fewer, every division, and the wishes it grants.
import { type Catalogue, labelCopies } from "../../catalogue/index.js";
import type { ChangeOver, Division, NotGranted, Ref, Ways } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import { cautions } from "../../wiring/index.js";
import { changeOverSentence, fewerSentence, listText, stepText, verdictWords, waysSentence } from "../../words/index.js";
import { para, styled, type Terminal } from "./terminal.js";

export interface WaysText {
  readonly catalogue: Pick<Catalogue, "cards">;
  readonly build: Build;
  readonly placeOf: (ref: Ref) => string | undefined;
  readonly terminal: Pick<Terminal, "colour">;
}

/** What a copy of the build's cards is called. */
export function namesOf(catalogue: Pick<Catalogue, "cards">, build: Build): (as: string) => string {
  const labels = labelCopies(build.cards, (id) => catalogue.cards.get(id)?.name ?? id);
  return (as) => labels.get(as) ?? as;
}

export function waysText(ways: Ways, { catalogue, build, placeOf, terminal }: WaysText): string {
  const nameOf = namesOf(catalogue, build);
  const title = (text: string) => styled(terminal, "bold", text);
  const because = (against: readonly NotGranted[]) => {
    const facts = new Map(against.flatMap((a) => a.facts.map((fact) => [fact.says, fact] as const)));
    return [...facts.values()].map((fact) => {
      const places = [...new Set(fact.refs.map((ref) => placeOf(ref) ?? `${ref.kind}/${ref.id}`))];
      return para("  ", `because ${fact.says}${places.length > 0 ? ` (${places.join(", ")})` : ""}`);
    });
  };
  const out = [title("Ways to run it"), para("", waysSentence(ways, nameOf))];
  if (ways.against) out.push(...because([ways.against]));
  const { fewer } = ways;
  const why = fewer ? fewerSentence(fewer, ways.wishes, nameOf) : "";
  if (why !== "") out.push(para("", why));
  if (fewer?.kind === "apart") out.push(...because(fewer.pairs));
  if (fewer?.kind === "searched") out.push(...because([fewer.against]));
  for (const [at, division] of ways.divisions.entries()) out.push(...divisionLines(division, at + 1, nameOf, title));
  if (ways.divisions.length > 0) {
    const all =
      ways.divisions.length === 1
        ? "No other division of the cards has as many of them on."
        : "These are all the divisions with as many cards on as can be.";
    out.push(ways.divisionsComplete ? all : "There may be other divisions.");
  }
  if (ways.byHand?.kind === "change-over") out.push(...byHandLines(ways.byHand, nameOf, title));
  return out.join("\n");
}

/** What the change-over asks to be read first. */
const handCautions = new Set(["mains-inside", "crt", "esd"]);

function byHandLines(hand: ChangeOver, nameOf: (as: string) => string, title: (text: string) => string): string[] {
  const lines = ["", title("Changed over by hand"), para("", changeOverSentence(hand))];
  for (const way of hand.ways) {
    const named = (word: string, cards: readonly string[]) => (cards.length === 0 ? "" : `; ${word} ${listText(cards.map(nameOf))}`);
    const says = `${way.id}: firmware ${way.firmware}${named("on:", way.on)}${named("off:", way.off)}${named("out:", way.out)}`;
    lines.push(para("   ", `${says} (${verdictWords[way.verdict].word})`));
  }
  for (const { from, to, steps } of hand.changes) {
    lines.push(`   From ${from} to ${to}:`);
    for (const [at, step] of steps.entries()) lines.push(para("     ", `${at + 1}. ${stepText(step, nameOf)}`));
  }
  if (hand.changes.length > 0)
    lines.push(...cautions.filter((c) => handCautions.has(c.id)).map((c) => para("   ", `Caution: ${c.title}. ${c.text}`)));
  return lines;
}

function divisionLines(division: Division, number: number, nameOf: (as: string) => string, title: (text: string) => string): string[] {
  const { ways, verdict, combination, switched } = division;
  const lines = [title(`Division ${number}: ${verdictWords[verdict].word}${combination ? `, evidence ${combination.evidence}` : ""}`)];
  for (const way of ways) {
    const others = way.versions.filter((v) => v !== way.firmware);
    const or = others.length === 0 ? "" : ` (or ${listText(others, "or")})`;
    const on = way.on.length === 0 ? "no card on" : listText(way.on.map(nameOf));
    lines.push(para("   ", `${way.id}: firmware ${way.firmware}${or}; ${on}`));
  }
  if (switched.length > 0) lines.push(para("   ", `switched on and off: ${listText(switched.map(nameOf))}`));
  return lines;
}
