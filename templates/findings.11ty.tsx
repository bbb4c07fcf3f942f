// Every finding of the data check: its code, what it means, why it matters, how it is mended.
import type { FindingsPage } from "../src/pages/index.js";
import { Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("findings");

export function render({ view }: Shown<FindingsPage>) {
  return (
    <Layout page={view}>
      <div class="answer">
        <p class="says">{view.answer}</p>
        <p>
          The same at the bench, without a page: <code>slotwright check --explain</code> and the code.
        </p>
      </div>
      {view.groups.map((group) => (
        <Section key={group.id} id={group.id} title={group.title}>
          <p>{group.about}</p>
          <dl class="fields">
            {group.findings.map((f) => (
              <div key={f.code} id={f.code}>
                <dt>
                  <code>{f.code}</code>
                </dt>
                <dd>
                  <p>{f.meaning}</p>
                  <p>Why it matters: {f.why}</p>
                  <p>To mend it: {f.mend}</p>
                </dd>
              </div>
            ))}
          </dl>
        </Section>
      ))}
    </Layout>
  );
}
