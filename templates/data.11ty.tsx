// About the data: whose it is, how to take it, how to add to it.
import type { DataPage } from "../src/pages/index.js";
import { Link, Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("data");

export function render({ view }: Shown<DataPage>) {
  const { root } = view;
  return (
    <Layout page={view}>
      <div class="answer">
        <p class="says">{view.answer}</p>
      </div>
      <Section title="Whose it is">
        <p>{view.club}</p>
        <p>Terms: {view.licence}</p>
        {view.keepers ? <p>Record keepers: {view.keepers}.</p> : null}
        {view.contact ? <p>To reach them: {view.contact}</p> : null}
      </Section>
      <Section id="take" title="Take it">
        <ul class="lines">
          {view.downloads.map((d) => (
            <li key={d.link.href}>
              <Link link={d.link} root={root} />
              <span class="more">{d.says}</span>
            </li>
          ))}
        </ul>
      </Section>
      <Section id="add" title="Add to it">
        <p>
          A record is a text file of names and values, one thing to a file. Its first line names its schema, so that an editor helps while
          you type. Two commands do the rest: <code>slotwright new</code> asks the questions for a new record, and{" "}
          <code>slotwright check</code> says what is wrong, where, and what to do: <Link link={view.findings} root={root} />.
        </p>
        <p>
          If you tested a machine once, <code>slotwright result</code> turns the build you planned into a tested build. What was seen, and
          what was left open, is worth as much as what worked.
        </p>
      </Section>
      <Section id="guide" title="Field guide">
        <ul class="lines">
          {view.guides.map((g) => (
            <li key={g.link.href}>
              <Link link={g.link} root={root} />
              <span class="more">{g.says}</span>
            </li>
          ))}
        </ul>
      </Section>
    </Layout>
  );
}
