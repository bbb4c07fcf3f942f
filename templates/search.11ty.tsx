// Search: the box, the filters and a place for results; the script does the rest and says so when it cannot.
import type { SearchPage } from "../src/pages/index.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("search");

export function render({ view }: Shown<SearchPage>) {
  return (
    <Layout page={view} scripts={["assets/search-data.js", "assets/search.js"]}>
      <p class="lead">A model number, a name, or what you see on the screen, in your own words.</p>
      <search>
        <form class="search" action="search.html" method="get">
          <label for="q">Look for</label>
          <div class="line">
            <input id="q" name="q" type="search" autocomplete="off" />
            <button type="submit">Find</button>
          </div>
          <div class="narrow">
            {view.filters.map((f) => (
              <label key={f.name}>
                {f.label}
                <select name={f.name}>
                  <option value="">anything</option>
                  {f.values.map((v) => (
                    <option key={v} value={v}>
                      {v}
                    </option>
                  ))}
                </select>
              </label>
            ))}
          </div>
        </form>
      </search>
      <noscript>
        <p>
          Search needs a script, which your browser does not run. All records are listed under <a href="cards/index.html">cards</a>,{" "}
          <a href="boards/index.html">boards</a>, <a href="conflicts/index.html">problems</a> and{" "}
          <a href="builds/index.html">tested builds</a>.
        </p>
      </noscript>
      <p id="said" role="status" aria-live="polite" />
      <ol id="found" class="found" />
    </Layout>
  );
}
