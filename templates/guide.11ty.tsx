// The field guide of one kind of record: every field, what may stand there, whether it is needed.
import type { GuidePage } from "../src/pages/index.js";
import { Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("guides");

export function render({ view }: Shown<GuidePage>) {
  return (
    <Layout page={view} heading={`Fields of a ${view.guide.kind} record`} kind="Field guide">
      <div class="answer">
        <p class="says">{view.answer}</p>
        <p>
          Such records lie in <code>{view.guide.folder}/</code>. Schema for editors and programs:{" "}
          <a href={`${view.root}${view.schema}`}>{view.guide.kind}.json</a>
        </p>
      </div>
      <Section title="Fields">
        <dl class="fields">
          {view.guide.fields.map((f) => (
            <div key={f.path}>
              <dt>
                <code>{f.path}</code> {f.needed ? <strong>{f.needed}</strong> : null}
              </dt>
              <dd>
                {f.description} <span class="more">{f.words}</span>
              </dd>
            </div>
          ))}
        </dl>
      </Section>
    </Layout>
  );
}
