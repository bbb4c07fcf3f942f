// How sure is this? The marks, each with what it means.
import type { SurePage } from "../src/pages/index.js";
import { Mark, MarkOnly, Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("sure");

export function render({ view }: Shown<SurePage>) {
  return (
    <Layout page={view}>
      <div class="answer">
        <p class="says">{view.answer}</p>
      </div>
      <Section title="What it says">
        <dl class="marks" data-examples="">
          {view.verdicts.map((v) => (
            <div key={v.mark.word}>
              <dt>
                <Mark mark={v.mark} />
              </dt>
              <dd>{v.means}</dd>
            </div>
          ))}
        </dl>
      </Section>
      <Section title="What it rests on">
        <dl class="marks" data-examples="">
          {view.evidences.map((e) => (
            <div key={e.word}>
              <dt>
                <MarkOnly mark={e.mark} /> {e.word}
              </dt>
              <dd>{e.means}</dd>
            </div>
          ))}
        </dl>
        <p>
          The evidence of a whole machine is its weakest link: each card with this board and firmware, each pair of cards that run together,
          and the machine as a whole. A tested build covers exactly what it had: its revision, firmware, cards, slots and settings. A
          machine that is nearly the same is named, never counted.
        </p>
        <p>A plain no carries no strokes. It rests on the facts named beside it.</p>
      </Section>
      <Section title="What is not known">
        <p>
          A figure that nobody has measured is written down as unknown and is never taken for nothing. The answer is then worked out for
          every way it could turn out. If all of them work, it works; if all of them fail, it is no; otherwise it is not known, and the page
          says what to measure.
        </p>
        <p>
          <a href="worth-finding-out.html">Worth finding out</a> lists what is missing, what settles most answers first.
        </p>
      </Section>
      <Section title="Known problems">
        <dl class="marks" data-examples="">
          {view.statuses.map((s) => (
            <div key={s.word}>
              <dt>{s.word}</dt>
              <dd>{s.means}</dd>
            </div>
          ))}
        </dl>
      </Section>
    </Layout>
  );
}
