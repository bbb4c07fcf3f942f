// The build sheet on the page: made for paper, read on a screen as well. Cautions first, boxes to tick, room to write.
import { useEffect, useRef, useState } from "preact/hooks";
import type { Combination } from "../../planning/index.js";
import { Ended } from "../worker/engine.js";
import type { NoSwitch, SheetDrawing, SheetStep, SheetTable, SheetView } from "../worker/sheet-view.js";
import { useApp } from "./app-context.js";
import { headOf } from "./how.js";

export function Sheet({ combination, onClose }: { combination: Combination; onClose: () => void }) {
  const { bench, build, places } = useApp();
  const [view, setView] = useState<SheetView>();
  const [failed, setFailed] = useState("");
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    let wanted = true;
    bench
      .ask("sheet", { build, combination })
      .then((v) => wanted && setView(v))
      .catch((problem: Error) => wanted && !(problem instanceof Ended) && setFailed(problem.message));
    return () => {
      wanted = false;
    };
  }, [bench, build, combination]);
  useEffect(() => title.current?.focus(), []);
  return (
    <section id="sheet" class="sheet-page" aria-labelledby="sheet-title">
      <h2 id="sheet-title" tabIndex={-1} ref={title}>
        {view?.title ?? "Build sheet"}
      </h2>
      <p class="more">{headOf(combination)}</p>
      <p class="acts">
        <button type="button" onClick={() => print()} disabled={!view}>
          Print this sheet
        </button>
        <button type="button" onClick={onClose}>
          Back to the combinations
        </button>
      </p>
      {failed ? <p role="alert">The sheet could not be made: {failed}</p> : null}
      {!view && !failed ? <p role="status">Drawing the sheet.</p> : null}
      {view?.kind === "switched" ? <div class="sheet" dangerouslySetInnerHTML={{ __html: view.html }} /> : null}
      {view?.kind === "plain" ? <Plain view={view} cautions={places.page("cautions")} /> : null}
    </section>
  );
}

function Plain({ view, cautions }: { view: Extract<SheetView, { kind: "plain" }>; cautions: string }) {
  return (
    <>
      <ul class="cautions">
        {view.cautions.map((c) => (
          <li key={c.title} class={c.stop ? "caution stop" : "caution"}>
            <strong>
              {c.stop ? "Stop. " : ""}
              {c.title}.
            </strong>{" "}
            {c.says}
          </li>
        ))}
      </ul>
      <p class="more">
        Nothing here replaces the rules and the licensed trades where you live. <a href={cautions}>All cautions</a>
      </p>
      {view.noSwitch ? <Refused why={view.noSwitch} /> : null}
      {view.tables.map((t) => (
        <Table key={t.title} table={t} />
      ))}
      {view.drawings.map((d) => (
        <Drawn key={d.title} drawing={d} />
      ))}
      {view.bench.length > 0 ? <Steps steps={view.bench} /> : null}
      <Room />
    </>
  );
}

function Refused({ why }: { why: NoSwitch }) {
  return (
    <div class="because">
      <p>{why.says}</p>
      <ul class="why">
        {why.reasons.map((r) => (
          <li key={r}>{r}</li>
        ))}
      </ul>
      {why.waysOut.length > 0 ? <p class="when">Ways out:</p> : null}
      <ul class="why">
        {why.waysOut.map((w) => (
          <li key={w}>{w}</li>
        ))}
      </ul>
    </div>
  );
}

function Table({ table }: { table: SheetTable }) {
  const heads = table.heads.some(Boolean);
  return (
    <div class="sheet-part">
      <h3>{table.title}</h3>
      <table class="list">
        {heads ? (
          <thead>
            <tr>
              {table.heads.map((h) => (
                <th key={h} scope="col">
                  {h || <span class="unseen">more</span>}
                </th>
              ))}
              {table.ticks ? (
                <th scope="col">
                  <span class="unseen">Done</span>
                </th>
              ) : null}
            </tr>
          </thead>
        ) : null}
        <tbody>
          {table.rows.map((r, at) => (
            <tr key={`${at}-${r.head}`}>
              <th scope="row">{r.head}</th>
              {r.cells.map((c, i) => (
                <td key={table.heads[i + 1] ?? i} data-label={table.heads[i + 1] || undefined}>
                  {c}
                </td>
              ))}
              {table.ticks ? (
                <td>
                  <span class="box" aria-hidden="true" />
                </td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Drawn({ drawing }: { drawing: SheetDrawing }) {
  return (
    <figure class="drawing">
      <figcaption>{drawing.title}</figcaption>
      <div class="on-narrow" dangerouslySetInnerHTML={{ __html: drawing.narrow }} />
      <div class="on-wide" dangerouslySetInnerHTML={{ __html: drawing.wide }} />
    </figure>
  );
}

function Steps({ steps }: { steps: readonly SheetStep[] }) {
  return (
    <div class="sheet-part">
      <h3>At the bench, step by step</h3>
      <ol class="steps">
        {steps.map((s, i) => (
          <li key={`${i}-${s.does}`}>
            <span class="box" aria-hidden="true" /> <span class="more">Power {s.power}.</span> {s.does}
            {s.expect.length > 0 ? (
              <ul>
                {s.expect.map((e) => (
                  <li key={e}>You see: {e}</li>
                ))}
              </ul>
            ) : null}
          </li>
        ))}
      </ol>
    </div>
  );
}

/** What was found, in the builder's own hand; it becomes the result of a tested build. */
function Room() {
  return (
    <div class="sheet-part room">
      <h3>What came of it</h3>
      <p class="line">Tested by</p>
      <p class="line">Date</p>
      <p class="line">Worked, in part, or failed</p>
      <p class="line">What was seen</p>
      <p class="line" />
      <p class="line" />
    </div>
  );
}
