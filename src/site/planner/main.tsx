// Starts the planner in its page: finds where records and workers are, opens what the address holds, and sets the page.
import { render } from "preact";
import { pageOf, sectionOf } from "../links.js";
import { connect, type Script } from "./engine/engine.js";
import type { BenchTasks, Tasks } from "./engine/protocol.js";
import { makeStore, openedWith } from "./state/store.js";
import { App } from "./ui/App.js";
import type { Places } from "./ui/desk.js";

const place = document.getElementById("planner");
if (place) void start(place);

async function start(at: HTMLElement): Promise<void> {
  const said = at.querySelector<HTMLElement>("[data-state]");
  const tell = (says: string) => {
    if (said) said.textContent = says;
  };
  if (location.protocol === "file:") {
    at.querySelector<HTMLElement>("[data-file]")?.removeAttribute("hidden");
    tell("");
    return;
  }
  const from = (name: string) => new URL(at.dataset[name] ?? "", location.href).href;
  const records = { url: from("records") };
  const script = (name: "solve" | "bench"): Script => new Worker(from(name));
  const solve = connect<Tasks>("solve", script, records);
  const bench = connect<BenchTasks>("bench", script, records);
  const places: Places = { record: (ref) => pageOf(ref.kind, ref.id) + sectionOf(ref), page: (name) => `${name}.html` };
  try {
    const opened = openedWith(location);
    const store = makeStore();
    const shelf = await solve.opened();
    if (opened?.kind === "named" && store.build.board === "") {
      const named = shelf.builds[opened.id];
      if (named) store.open(named);
    }
    at.replaceChildren();
    render(<App shelf={shelf} store={store} solve={solve} bench={bench} places={places} />, at);
  } catch (problem) {
    tell(`The planner could not start: ${problem instanceof Error ? problem.message : String(problem)} Load the page again.`);
  }
}
