// A record as it is written, line by line, so that a fact can be pointed to.
import type { SourcePage } from "../src/pages/index.js";
import { Link } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("sources");

export function render({ view }: Shown<SourcePage>) {
  return (
    <Layout page={view} heading={view.file} kind="As written" wide>
      <p>
        The record behind <Link link={view.record} root={view.root} />.
      </p>
      <ol class="source">
        {view.lines.map((line, i) => (
          <li key={i} id={`L${i + 1}`}>
            <code>{line || " "}</code>
          </li>
        ))}
      </ol>
    </Layout>
  );
}
