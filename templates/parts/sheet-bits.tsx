// Pieces of what is made for paper: a line to tick off, a table with its heads on a phone, the cautions, the card for the lid.
import type { ComponentChildren } from "preact";
import type { ChangeOverView, SheetPage } from "../../src/pages/index.js";
import { Section } from "./bits.js";

export const box = <span class="box" aria-hidden="true" />;

export function Tick({ children }: { readonly children: ComponentChildren }) {
  return (
    <li class="tick">
      <span class="box" aria-hidden="true" />
      <span>{children}</span>
    </li>
  );
}

export function Table({
  heads,
  rows,
  css,
}: {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly ComponentChildren[])[];
  readonly css?: string;
}) {
  return (
    <div class={`scroll ${css?.includes("pairs") ? "in-two" : ""}`}>
      <table class={`list ${css ?? ""}`}>
        <thead>
          <tr>
            {heads.map((h) =>
              h === "" ? (
                <td key={h} />
              ) : (
                <th key={h} scope="col">
                  {h}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={i}>
              {row.map((cell, k) => (
                <td key={heads[k]} data-label={heads[k]}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

export function Caution({ caution }: { readonly caution: SheetPage["sheet"]["cautions"][number] }) {
  return (
    <li class={`caution ${caution.severity}`}>
      <strong>
        {caution.severity === "stop" ? "Stop. " : ""}
        {caution.title}.
      </strong>{" "}
      {caution.text}
    </li>
  );
}

export function Cautions({ cautions }: { readonly cautions: SheetPage["sheet"]["cautions"] }) {
  return (
    <Section id="cautions" title="Before you start">
      <ul class="cautions">
        {cautions.map((c) => (
          <Caution key={c.id} caution={c} />
        ))}
      </ul>
      <p>The rules and the licensed trades where you live come before anything on this sheet.</p>
    </Section>
  );
}

/** The change-over by hand, to cut out and keep in the lid. */
export function LidCard({ view, title }: { readonly view: ChangeOverView; readonly title: string }) {
  return (
    <Section id="by-hand" title={title}>
      <p>{view.says}</p>
      <Table
        heads={["Way", "Firmware", "On", "Off"]}
        rows={view.ways.map((w) => [w.name, <code key="f">{w.firmware}</code>, w.on, w.off])}
      />
      <div class={view.changes.length > 6 ? "lid many" : "lid"}>
        {view.changes.map((c) => (
          <div key={c.title} class="lid-card">
            <h3>{c.title}</h3>
            <ol>
              {c.steps.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          </div>
        ))}
      </div>
    </Section>
  );
}
