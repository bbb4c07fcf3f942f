// The app context: what every piece of the planner's page has at hand. Pieces read it and make moves; they keep nothing of their own but what is open.
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { labelCopies } from "../../catalogue/index.js";
import type { Answer, Counts, OnOff, Ref } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import type { Store } from "../state/store.js";
import type { CatalogueSummary } from "../worker/catalogue-summary.js";
import type { Connection } from "../worker/engine.js";
import type { BenchTasks, Tasks } from "../worker/protocol.js";

/** Where the links of facts lead: pages of the site, or places in the single file. */
export interface Places {
  record(ref: Ref): string;
  page(name: "sure" | "cautions"): string;
}

export interface AppContext {
  readonly catalogue: CatalogueSummary;
  readonly store: Store;
  readonly build: Build;
  readonly solve: Connection<Tasks>;
  readonly bench: Connection<BenchTasks>;
  readonly places: Places;
  /** The newest answer there is; while another is being worked out it is the one before. */
  readonly answer?: Answer | undefined;
  /** The build it answers. */
  readonly answered: Build;
  /** What is on in which way, and what could be; of a machine with everything on in one way there is nothing to tell. */
  readonly onOff?: readonly OnOff[] | undefined;
  /** What was counted of the answer; while more is being counted there is none. */
  readonly counts?: Counts | undefined;
  /** It is being counted apart. */
  readonly counting: boolean;
}

export const SharedApp = createContext<AppContext | undefined>(undefined);

export function useApp(): AppContext {
  const app = useContext(SharedApp);
  if (!app) throw new Error("A piece of the planner was set without its app.");
  return app;
}

/** What a copy is called: the card's name, with what tells it from other copies of the card. */
export function cardName(app: AppContext, as: string): string {
  const nameOf = (card: string) => app.catalogue.names[`card/${card}`] ?? card;
  return labelCopies(app.build.cards, nameOf).get(as) ?? nameOf(as);
}
