// Starts the planner in an element: opens what the address holds, waits for the records, sets the page. The site and the single file both use it.
import { render } from "preact";
import { makeStore, openedWith } from "./state/store.js";
import { App } from "./ui/App.js";
import type { Places } from "./ui/app-context.js";
import type { Connection } from "./worker/engine.js";
import type { BenchTasks, Tasks } from "./worker/protocol.js";

export interface Surroundings {
  readonly solve: Connection<Tasks>;
  readonly bench: Connection<BenchTasks>;
  readonly places: Places;
  /** What stands before the build in the address. */
  readonly prefix: string;
}

/** Gives a way to end it, when the element is to show something else. */
export async function startPlanner(at: HTMLElement, { solve, bench, places, prefix }: Surroundings): Promise<() => void> {
  const left = new AbortController();
  const opened = openedWith(location, prefix);
  const store = makeStore(prefix, left.signal);
  const catalogue = await solve.opened();
  const asked = opened?.kind === "named" && store.build.board === "" ? opened.id : undefined;
  const named = asked === undefined ? undefined : catalogue.builds[asked];
  if (named) store.open(named);
  at.replaceChildren();
  render(<App catalogue={catalogue} store={store} solve={solve} bench={bench} places={places} lost={named ? undefined : asked} />, at);
  return () => {
    left.abort();
    render(null, at);
  };
}
