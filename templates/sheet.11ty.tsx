// The build sheet of each switched build of the club.
import type { SheetPage } from "../src/pages/index.js";
import { Link } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";
import { Sheet } from "./parts/Sheet.js";

export const data = paged("sheets");

export function render({ view }: Shown<SheetPage>) {
  return (
    <Layout page={view} heading={view.sheet.title} kind="Build sheet">
      {view.build ? (
        <p class="on-screen">
          The build: <Link link={view.build} root={view.root} />. Print this page; it is made for paper.
        </p>
      ) : null}
      <Sheet view={view} />
    </Layout>
  );
}
