// A tested build: what came of it, on exactly which machine, what it proves. A build without a result: the question.
import type { BuildPage } from "../src/pages/index.js";
import { BarTable, InkLegend } from "./parts/Bar.js";
import { Act, Answer, Drawing, Link, Links, Mark, Notes, Section, Sources } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";
import { Table } from "./parts/sheet-bits.js";

export const data = paged("builds");

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <Section title={title}>
      <ul>
        {lines.map((l) => (
          <li key={l}>{l}</li>
        ))}
      </ul>
    </Section>
  );
}

function Refused({ refused }: { readonly refused: NonNullable<BuildPage["refused"]> }) {
  const { why, whyComplete, helps, helpsComplete, costs } = refused;
  return (
    <>
      <Section id="why-not" title="Why not">
        <ul>
          {why.map((w) => (
            <li key={w}>{w}</li>
          ))}
        </ul>
        <p class="more">{whyComplete}</p>
      </Section>
      <Section id="helps" title="What would help">
        <ul>
          {helps.map((h) => (
            <li key={h}>{h}</li>
          ))}
        </ul>
        <p class="more">{helpsComplete}</p>
        {costs.rows.length > 0 ? <Table heads={costs.heads} rows={costs.rows} /> : null}
      </Section>
    </>
  );
}

export function render({ view }: Shown<BuildPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={view.name} kind={view.tested ? "Tested build" : "A question"}>
      <Answer mark={view.mark} says={view.answer} sure={view.sure} root={root} />
      {view.now ? (
        <p class="now">
          Put to all the records here as a question, this machine comes out as: <Mark mark={view.now} />.
        </p>
      ) : null}
      {view.summary ? <p>{view.summary}</p> : null}
      {view.refused ? <Refused refused={view.refused} /> : null}
      <ResultSection view={view} />
      <MachineSection view={view} />
      <Lines title="What was seen" lines={view.symptoms} />
      <Lines title="Faults left open" lines={view.faults} />
      <Lines title="What was done about it" lines={view.remedies} />
      {view.conflicts.length > 0 ? (
        <Section title="Problems that explain it">
          <p>
            <Links links={view.conflicts} root={root} />
          </p>
        </Section>
      ) : null}
      {view.question ? (
        <Section title="Open question">
          <p>{view.question}</p>
        </Section>
      ) : null}
      {view.proves.length > 0 ? (
        <Section id="proves" title="What this proves">
          <ul>
            {view.proves.map((p) => (
              <li key={p}>{p}</li>
            ))}
          </ul>
          <p class="more">Nothing beyond that: another revision, slot or setting is another machine.</p>
        </Section>
      ) : null}
      <Act href={view.sheet} root={root}>
        Build sheet: parts, wires, burn recipe, bench test
      </Act>
      <Act href={view.planner} root={root}>
        Open it in the planner
      </Act>
      {view.photo ? (
        <Section title="Picture">
          {view.photo.src ? (
            <figure class="photo">
              <img src={`${root}${view.photo.src}`} alt={view.photo.alt} loading="lazy" width="640" height="400" />
              <figcaption>{view.photo.says}</figcaption>
            </figure>
          ) : (
            <p>
              {view.photo.href ? <a href={view.photo.href}>{view.photo.alt}</a> : null} {view.photo.says}
            </p>
          )}
        </Section>
      ) : null}
      <Notes notes={view.notes} />
      <Sources sources={view.sources} />
    </Layout>
  );
}

function ResultSection({ view }: { readonly view: BuildPage }) {
  return (
    <Section id="result" title="Mode by mode">
      {view.modes.length > 0 ? (
        <ul class="lines">
          {view.modes.map((m) => (
            <li key={m.id}>
              <span class="name">
                {m.name}: firmware <code>{m.firmware}</code>
              </span>
              {m.mark ? (
                <span class="state">
                  <Mark mark={m.mark} evidence={false} />
                </span>
              ) : null}
              <span class="more">Switched on: {m.cards}.</span>
              {m.symptoms.map((s) => (
                <span key={s} class="more">
                  Seen: {s}
                </span>
              ))}
              {m.notes ? <span class="more">{m.notes}</span> : null}
            </li>
          ))}
        </ul>
      ) : (
        <p>One way of running, with every card on.</p>
      )}
      {view.bars && view.bars.length > 0 ? (
        <>
          <p class="more">Each card alone on this board revision:</p>
          <InkLegend />
          <BarTable caption="Each card over the releases" rows={view.bars} root={view.root} />
        </>
      ) : null}
    </Section>
  );
}

function MachineSection({ view }: { readonly view: BuildPage }) {
  const { root } = view;
  return (
    <Section id="machine" title="The machine, exactly">
      <dl class="facts">
        <div>
          <dt>Board</dt>
          <dd>
            <Link link={view.board} root={root} />, revision {view.revision}
          </dd>
        </div>
        <div>
          <dt>Memory</dt>
          <dd>{view.memory}</dd>
        </div>
        <div>
          <dt>Firmware</dt>
          <dd>
            <Link link={view.firmware} root={root} />
          </dd>
        </div>
      </dl>
      {view.slotDrawing ? <Drawing figure={view.slotDrawing} /> : null}
      <div class="scroll">
        <table class="list">
          <thead>
            <tr>
              <th scope="col">Card</th>
              <th scope="col">Revision</th>
              <th scope="col">Slot</th>
              <th scope="col">Settings</th>
            </tr>
          </thead>
          <tbody>
            {view.cards.map((c) => (
              <tr key={c.link.text}>
                <th scope="row">
                  <Link link={c.link} root={root} />
                </th>
                <td data-label="Revision">{c.revision ? <code>{c.revision}</code> : "\u2013"}</td>
                <td data-label="Slot">
                  <code>{c.slot}</code>
                </td>
                <td data-label="Settings">{c.settings ? <code>{c.settings}</code> : "\u2013"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Section>
  );
}
