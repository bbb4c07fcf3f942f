// The planner's page: a place for the script to set it in, and what to read when no script runs.
import type { PageHead } from "../src/pages/index.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("planner");

export function render({ view }: Shown<PageHead>) {
  return (
    <Layout page={view} wide scripts={["assets/planner.js"]} styles={["assets/planner.css"]}>
      <div id="planner" data-records="data/planner.pack" data-solve="assets/planner-solve.js" data-bench="assets/planner-bench.js">
        <noscript>
          <p class="lead">
            The planner needs a script, which your browser does not run. What works in which machine stands under{" "}
            <a href="boards/index.html">boards</a> and <a href="cards/index.html">cards</a> as well, one card at a time;{" "}
            <code>slotwright plan</code> answers whole builds on the command line.
          </p>
        </noscript>
        <p class="lead" data-file hidden>
          Browsers start no planner from a folder on a disk. Use the single file that <code>slotwright pocket</code> makes; it holds the
          records, the search and the planner, and opens from a disk or a memory stick. Every other page here can be read.
        </p>
        <p data-state role="status">
          Fetching the records.
        </p>
      </div>
    </Layout>
  );
}
