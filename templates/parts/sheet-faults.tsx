// What to do when something else is seen: fifteen rows in two steps, for paper; the whole table, for a screen.
import type { SheetPage } from "../../src/pages/index.js";
import { Section } from "./bits.js";
import { Table } from "./sheet-bits.js";

export function Finding({ sheet }: Pick<SheetPage, "sheet">) {
  const { finding } = sheet;
  if (!finding) return null;
  return (
    <Section id="finding" title="Finding a fault">
      <p>{finding.says}</p>
      <h3>First: a meter, no power; device and switched cards out</h3>
      <Table
        heads={["Measured", "Seen", "What it is, and what to do", "Faults"]}
        rows={finding.meter.map((r) => [r.measure, r.sees, r.means, r.faults])}
        css="finding"
      />
      {finding.firmware.length > 0 ? (
        <>
          <h3>Then: power on, started at every position without the switched cards, then with them</h3>
          <Table
            heads={["Seen at the positions", "What it is, and what to do", "Faults"]}
            rows={finding.firmware.map((r) => [r.sees, r.means, r.faults])}
            css="finding"
          />
        </>
      ) : null}
      <p>
        {finding.after} Every fault by what is seen: this sheet on a screen, and the files of <code>slotwright plan --files</code>.
      </p>
    </Section>
  );
}

export function WholeTable({ sheet }: Pick<SheetPage, "sheet">) {
  return (
    <Section id="faults" title="If something else is seen">
      <p>{sheet.faultsSay}</p>
      {sheet.suggestion === undefined ? null : <p>{sheet.suggestion}</p>}
      <Table
        css="faults"
        heads={["Seen", "Likely fault and what to do", "To tell them apart"]}
        rows={sheet.faults.map((f) => [
          f.mayLookRight ? `${f.seen} (may look right)` : f.seen,
          <ol key="c">
            {f.causes.map((c) => (
              <li key={c}>{c}</li>
            ))}
          </ol>,
          <ul key="t" class="plain">
            {f.tellApart.map((m) => (
              <li key={m.measure}>
                {m.measure} {m.outcomes.map((o) => `${o.sees}: ${o.causes}`).join("; ")}.
              </li>
            ))}
            {f.twins.length > 0 ? <li>No meter tells apart: {f.twins.join("; ")}.</li> : null}
          </ul>,
        ])}
      />
      {sheet.silentFaults.length > 0 ? <p>Nothing is seen of these: {sheet.silentFaults.join("; ")}.</p> : null}
    </Section>
  );
}

export function TwoFaults({ sheet }: Pick<SheetPage, "sheet">) {
  if (sheet.doubleFaults.length === 0) return null;
  return (
    <Section id="two-faults" title="If two were swapped">
      <p>{sheet.doubleFaultsSay}</p>
      <Table css="faults pairs" heads={["Seen", "Likely faults"]} rows={sheet.doubleFaults.map((f) => [f.seen, f.causes.join("; or ")])} />
    </Section>
  );
}
