// The index of one kind of record: groups of lines, each with its answer.
import type { ListPage } from "../src/pages/index.js";
import { counted, Link, Mark, Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("lists");

export function render({ view }: Shown<ListPage>) {
  return (
    <Layout page={view}>
      <p class="lead">{view.answer}</p>
      {view.groups.map((g) => (
        <Section key={g.title} title={g.title}>
          <ul class="lines">
            {g.lines.map((l) => (
              <li key={l.link.href}>
                <Link link={l.link} root={view.root} />
                {l.mark ? (
                  <span class="state">
                    <Mark mark={l.mark} />
                  </span>
                ) : null}
                <span class="more" {...counted(l.counts)}>
                  {l.says}
                </span>
              </li>
            ))}
          </ul>
        </Section>
      ))}
    </Layout>
  );
}
