// The planner on its page of the site: where its records and workers are, and what to say where it cannot run.
import { pageOf, sectionOf } from "../pages/index.js";
import { startPlanner } from "./start.js";
import { connect, type Script } from "./worker/engine.js";
import type { BenchTasks, Tasks } from "./worker/protocol.js";

const place = document.getElementById("planner");
if (place) void start(place);

async function start(at: HTMLElement): Promise<void> {
  const tell = (says: string) => {
    const said = at.querySelector<HTMLElement>("[data-state]");
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
  try {
    await startPlanner(at, {
      solve: connect<Tasks>("solve", script, records),
      bench: connect<BenchTasks>("bench", script, records),
      places: { record: (ref) => pageOf(ref.kind, ref.id) + sectionOf(ref), page: (name) => `${name}.html` },
      prefix: "#",
    });
  } catch (problem) {
    tell(`The planner could not start: ${problem instanceof Error ? problem.message : String(problem)} Load the page again.`);
  }
}
