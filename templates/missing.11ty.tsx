// There is no page at this address.
import type { PageHead } from "../src/pages/index.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("missing");

export function render({ view }: Shown<PageHead>) {
  return (
    <Layout page={view} heading="Not here">
      <p class="lead">There is no page at this address. A record may have been renamed.</p>
      <p>
        <a href="search.html">Search for it</a>, or begin at the <a href="index.html">start</a>.
      </p>
    </Layout>
  );
}
