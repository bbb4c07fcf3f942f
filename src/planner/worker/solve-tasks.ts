// What the solving worker does: it answers builds, so that the page itself never waits.
import type { Compiled } from "../../encoding/index.js";
import { type AskedUnread, type InvalidBuild, type ResolvedBuild, resolveBuild } from "../../machine/index.js";
import {
  type Answer,
  answer,
  answerUnread,
  beforeYouBuy,
  type Counts,
  compileSettled,
  countsOf,
  findOnOff,
  waysOf,
  whatWouldFit,
} from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import type { Budget } from "../../solver/index.js";
import { summarizeCatalogue } from "./catalogue-summary.js";
import { condensed } from "./condense.js";
import type { Tasks } from "./protocol.js";
import { catalogue, openRecords } from "./serve.js";
import { findWhyNot } from "./why-not.js";

/** A why-not is asked by a tap and wanted at once. */
const whyBudget_ms = 4000;
/** Longest one count may hold up an answer. */
const counted_ms = 80;
/** Longest the cells of the ways may hold up an answer. */
const onOff_ms = 400;
/** Ways shown. */
const most = 10;
/** In the page itself, where a browser allows no worker, a long count would stop everything. */
const inPage_ms = 1000;

/** Of a machine with a record that could not be read. */
const nothingCounted: Counts = { count: "0", exact: true, hanging: "0", hangingExact: false, kinds: [], facets: [] };

type Asks<K extends keyof Tasks> = Tasks[K]["asks"];
type Gives<K extends keyof Tasks> = Tasks[K]["gives"];

function until(ms: number): Budget {
  const end = performance.now() + ms;
  return { stop: () => performance.now() > end };
}

function compiledOf(
  build: Build,
): { readonly kind: "compiled"; readonly asked: ResolvedBuild; readonly question: Compiled } | AskedUnread | InvalidBuild {
  const asked = resolveBuild(catalogue(), build);
  return asked.kind !== "question" ? asked : { kind: "compiled", asked: asked.question, question: compileSettled(asked.question) };
}

/** All counts, when they come to an end at once. */
function quickly(compiled: Compiled, { exact, hangingExact, verdict }: Answer): Counts | undefined {
  if (verdict === "ruled-out" || !exact || !hangingExact) return undefined;
  const counts = countsOf(compiled, () => until(counted_ms));
  return counts.kinds.every((k) => k.exact) && counts.facets.length > 0 ? counts : undefined;
}

/** It is chosen what is on: there are several ways, or one in which a card may be off. */
const chosenOn = (build: Build) => (build.modes ?? []).some((m, at) => at > 0 || m.cards || m.on_or_off);

export const solveTasks = {
  async open({ records }: Asks<"open">): Promise<Gives<"open">> {
    return summarizeCatalogue(await openRecords(records));
  },
  answer({ build, most_ms }: Asks<"answer">): Gives<"answer"> {
    const begun = performance.now();
    const compiled = compiledOf(build);
    if (compiled.kind === "misasked") return compiled;
    if (compiled.kind === "unread")
      return {
        kind: "answered",
        answer: answerUnread(catalogue(), compiled.unread),
        counts: nothingCounted,
        took: performance.now() - begun,
      };
    const told = answer(compiled.question, { most, budget: until(most_ms), counting: () => until(counted_ms) });
    const short = { ...told, combinations: told.combinations.map(condensed) };
    const onOff = chosenOn(build) ? findOnOff(compiled.asked, until(onOff_ms)) : undefined;
    return { kind: "answered", answer: short, counts: quickly(compiled.question, told), onOff, took: performance.now() - begun };
  },
  count({ build, most_ms }: Asks<"count">): Gives<"count"> {
    const compiled = compiledOf(build);
    if (compiled.kind === "misasked") return compiled;
    if (compiled.kind === "unread") return nothingCounted;
    const all = "document" in globalThis ? Math.min(most_ms, inPage_ms) : most_ms;
    const end = performance.now() + all;
    // Each count gets a third of what is left, so that the first cannot take it all.
    return countsOf(compiled.question, () => until((end - performance.now()) / 3));
  },
  narrow({ build, only, most_ms }: Asks<"narrow">): Gives<"narrow"> {
    const compiled = compiledOf(build);
    if (compiled.kind === "unread") return { kind: "narrowed", ways: [] };
    return compiled.kind === "misasked"
      ? compiled
      : { kind: "narrowed", ways: waysOf(compiled.question, only, most, until(most_ms)).map(condensed) };
  },
  why({ build, choice, value }: Asks<"why">): Gives<"why"> {
    return findWhyNot(catalogue(), build, choice, value, until(whyBudget_ms));
  },
  buy({ build, card }: Asks<"buy">): Gives<"buy"> {
    return beforeYouBuy(catalogue(), build, card);
  },
  fits({ build }: Asks<"fits">): Gives<"fits"> {
    return whatWouldFit(catalogue(), build);
  },
};
