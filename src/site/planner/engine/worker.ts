// The solving worker: holds the catalogue and answers builds, so that the page itself never waits.
import type { Catalogue } from "../../../catalogue/index.js";
import { beforeYouBuy, plan, whatWouldFit, withChoice } from "../../../planning/index.js";
import type { Budget } from "../../../solver/index.js";
import { facetsOf } from "./facets.js";
import type { Tasks } from "./protocol.js";
import { catalogueFrom, serve } from "./serve.js";
import { shelfOf } from "./shelf.js";

/** A why-not is asked by a tap and wanted at once. */
const whyBudget_ms = 4000;

type Asks<K extends keyof Tasks> = Tasks[K]["asks"];
type Gives<K extends keyof Tasks> = Tasks[K]["gives"];

let catalogue: Catalogue;

function until(ms: number): Budget {
  const end = performance.now() + ms;
  return { stop: () => performance.now() > end };
}

export const handlers = {
  async open({ records }: Asks<"open">): Promise<Gives<"open">> {
    catalogue = await catalogueFrom(records);
    return shelfOf(catalogue);
  },
  answer({ build, most_ms }: Asks<"answer">): Gives<"answer"> {
    const begun = performance.now();
    const budget = until(most_ms);
    const answer = plan(catalogue, build, { most: 10, budget });
    if (answer.kind === "misasked") return answer;
    const facets = answer.verdict === "ruled-out" ? [] : facetsOf(catalogue, build, budget);
    return { kind: "answered", answer, facets, took: performance.now() - begun };
  },
  why({ build, choice, value }: Asks<"why">): Gives<"why"> {
    const answer = plan(catalogue, withChoice(build, choice, value), { most: 1, budget: until(whyBudget_ms) });
    if (answer.kind === "misasked") return answer;
    // A repair that only takes the wish itself back is no help.
    const repairs = answer.repairs.filter((r) => !(r.gives.length === 1 && r.gives[0]!.id === choice));
    return { kind: "why-not", reasons: answer.reasons, repairs };
  },
  buy({ build, card }: Asks<"buy">): Gives<"buy"> {
    return beforeYouBuy(catalogue, build, card);
  },
  fits({ build }: Asks<"fits">): Gives<"fits"> {
    return whatWouldFit(catalogue, build);
  },
};

serve<Tasks>(self as unknown as Parameters<typeof serve>[0], handlers);
