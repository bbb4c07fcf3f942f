// A board: the answer, how to tell its revisions apart, then slots, addresses, rails, firmware, problems, tests.
import type { BoardPage } from "../src/pages/index.js";
import {
  Act,
  Answer,
  Claims,
  Conflicts,
  counted,
  Drawing,
  Facts,
  Fold,
  Link,
  Notes,
  Section,
  Sources,
  Tested,
  Value,
} from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("boards");

export function render({ view }: Shown<BoardPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={view.name} kind="Board">
      <Answer says={view.answer} counts={view.counts} sure={view.sure} root={root} />
      <Act href={view.planner} root={root}>
        Plan a machine with this board
      </Act>
      <Drawing figure={view.slotDrawing} />
      <RevisionsSection view={view} />
      {view.conflicts.length > 0 ? (
        <Section id="problems" title="Known problems on this board">
          <Conflicts lines={view.conflicts} root={root} />
        </Section>
      ) : null}
      <SlotsSection view={view} />
      <AddressesSection view={view} />
      <RailsSection view={view} />
      <FirmwareSection view={view} />
      <Fold id="facts" title="What it is">
        {view.summary ? <p>{view.summary}</p> : null}
        <Facts facts={view.facts} />
        <p>{view.memory}</p>
      </Fold>
      {view.tested.length > 0 ? (
        <Fold id="tested" title="Tested on it" says={view.tested.length === 1 ? "one build" : `${view.tested.length} builds`}>
          {view.timeDrawing ? <Drawing figure={view.timeDrawing} /> : null}
          <Tested builds={view.tested} root={root} />
        </Fold>
      ) : null}
      <Notes notes={view.notes} folded />
      <Sources sources={view.sources} folded />
    </Layout>
  );
}

function RevisionsSection({ view }: { readonly view: BoardPage }) {
  const { root } = view;
  return (
    <Section id="revisions" title="Which revision is yours?">
      <dl class="revisions">
        {view.revisions.map((r) => (
          <div key={r.id}>
            <dt>
              <code>{r.id}</code> {r.date ? <span class="more">since {r.date}</span> : null}
            </dt>
            <dd>
              <p>{r.tell}</p>
              {r.changes ? <p class="more">Changed: {r.changes}</p> : null}
              <p {...counted(r.counts)}>
                {r.works}. <Link link={r.matrix} root={root} />
              </p>
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}

function SlotsSection({ view }: { readonly view: BoardPage }) {
  return (
    <Fold id="slots" title="Slots" says={view.slots.map((s) => s.id).join(", ")}>
      <div class="scroll">
        <table class="list">
          <thead>
            <tr>
              <th scope="col">Slot</th>
              <th scope="col">Kind</th>
              <th scope="col">Longest card</th>
              <th scope="col">Highest</th>
              <th scope="col">Opening</th>
              <th scope="col">Bus master</th>
              <th scope="col">Lines that reach it</th>
            </tr>
          </thead>
          <tbody>
            {view.slots.map((s) => (
              <tr key={s.id}>
                <th scope="row">
                  <code>{s.id}</code>
                </th>
                <td data-label="Kind">{s.kind}</td>
                <td data-label="Longest card">
                  <Value value={s.longest} />
                </td>
                <td data-label="Highest">
                  <Value value={s.highest} />
                </td>
                <td data-label="Opening">{s.opening}</td>
                <td data-label="Bus master">
                  <Value value={s.master} />
                </td>
                <td data-label="Lines that reach it">{s.lines}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {view.chain ? <p>{view.chain}</p> : null}
    </Fold>
  );
}

function AddressesSection({ view }: { readonly view: BoardPage }) {
  return (
    <Fold id="addresses" title="What the board itself takes, and where cards can answer">
      <dl class="facts">
        {view.fixed.map((f) => (
          <div key={f.name + f.on}>
            <dt>
              {f.name}
              {f.on ? <span class="more"> {f.on}</span> : null}
            </dt>
            <dd>
              <Claims lines={f.lines} />
              {f.notWritten}
            </dd>
          </div>
        ))}
      </dl>
      {view.maps.map((m) => (
        <div key={m.title}>
          <h3>{m.title}</h3>
          <Drawing figure={m.drawing} />
        </div>
      ))}
    </Fold>
  );
}

function RailsSection({ view }: { readonly view: BoardPage }) {
  return (
    <Fold id="rails" title="Supply">
      <p class="more">Each rail of the newest revision, loaded by the board alone, up to what may be planned with.</p>
      <Drawing figure={view.railDrawing} />
      <div class="scroll">
        <table class="list">
          <thead>
            <tr>
              <th scope="col">Rail</th>
              <th scope="col">Supply gives</th>
              <th scope="col">Board takes</th>
              <th scope="col">Most for one slot</th>
              <th scope="col">Holds for</th>
            </tr>
          </thead>
          <tbody>
            {view.rails.map((r) => (
              <tr key={r.rail + r.on}>
                <th scope="row">
                  <code>{r.rail}</code>
                </th>
                <td data-label="Supply gives">
                  <Value value={r.limit} />
                  {r.derate ? `, ${r.derate}` : ""}
                </td>
                <td data-label="Board takes">
                  <Value value={r.board} />
                </td>
                <td data-label="Most for one slot">
                  <Value value={r.slot} />
                </td>
                <td data-label="Holds for">{r.on || "every revision"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Fold>
  );
}

function FirmwareSection({ view }: { readonly view: BoardPage }) {
  const { root } = view;
  return (
    <Fold id="firmware" title="Firmware">
      {view.firmware.map((f) => (
        <div key={f.link.href}>
          <h3>
            <Link link={f.link} root={root} />
          </h3>
          <ul class="plain">
            {f.lines.map((l) => (
              <li key={l.revision}>
                Revision <code>{l.revision}</code>: {l.versions}
              </li>
            ))}
          </ul>
        </div>
      ))}
      {view.sockets.map((s) => (
        <div key={s.id + s.on} class="socket">
          <h3>
            Socket <code>{s.id}</code> {s.on}
          </h3>
          <p>
            {s.says}. Slowest memory device that works: <Value value={s.slowest} />.
          </p>
          {s.pins.length > 0 ? (
            <ul class="plain">
              {s.pins.map((p) => (
                <li key={p.pin}>
                  pin <code>{p.pin}</code>: {p.carries}
                </li>
              ))}
            </ul>
          ) : null}
        </div>
      ))}
    </Fold>
  );
}
