// The build sheet, made for paper first: the machine on the first page, then parts, wires, pins, test, and what is looked up seldom.
// Boxes to tick, room to write. One component for the page and the file.
import type { FaceView, SheetPage } from "../../src/pages/index.js";
import { Drawing, Mark, Section, Svg } from "./bits.js";
import { box, LidCard, Table, Tick } from "./sheet-bits.js";
import { Finding, TwoFaults, WholeTable } from "./sheet-faults.js";
import { FirstPage, FurtherCautions } from "./sheet-first.js";

function Faces({ faces }: { readonly faces: readonly FaceView[] }) {
  return (
    <>
      {faces.map((f) => (
        <Drawing key={f.title} figure={f.figure} />
      ))}
    </>
  );
}

export function Sheet({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  return (
    <div class="sheet">
      <p class="says">{sheet.machine}.</p>
      <p class="sure">
        <Mark mark={view.mark} />
        {sheet.evidenceNotes[0] ? `. ${sheet.evidenceNotes[0]}` : ""}
      </p>
      <p class="room">Built by ______________________ Date ______________ Serial number ______________</p>
      <FirstPage view={view} />
      <Provisos view={view} />
      <PartsSection view={view} />
      <SlotsSection view={view} />
      <Section id="wires" title="Wires">
        <Table
          heads={["Laid", "Wire", "Label", "From", "To", "Where", "Current", "Measured"]}
          rows={sheet.wires.map((w) => [box, w.number, <code key="l">{w.label}</code>, w.from, w.to, w.run, w.current, box])}
          css="ticks wires"
        />
      </Section>
      <Section id="connectors" title="Connector faces">
        <div class="faces">
          <Faces faces={view.faces} />
        </div>
      </Section>
      <PinsSection view={view} />
      <PanelSection view={view} />
      <BenchSection view={view} />
      <Finding sheet={sheet} />
      <div class="on-screen">
        <WholeTable sheet={sheet} />
        <TwoFaults sheet={sheet} />
      </div>
      <ProofSection view={view} />
      {view.changeOver ? <LidCard view={view.changeOver} title="By hand, without the switch" /> : null}
      <DrawnSection view={view} />
      <Section id="evidence" title="What this rests on">
        {view.why.length > 0 ? <p>{view.why.join(" ")}</p> : null}
        <ul>
          {sheet.evidenceNotes.map((e) => (
            <li key={e}>{e}</li>
          ))}
          {sheet.nearMatches.map((n) => (
            <li key={n}>Near, but not the same: {n}</li>
          ))}
          {sheet.notes.map((n) => (
            <li key={n}>{n}</li>
          ))}
        </ul>
      </Section>
      <FurtherCautions sheet={sheet} />
    </div>
  );
}

/** What the simulation says, what one broken wire could do, and the sums. */
function ProofSection({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  return (
    <>
      <Section id="proof" title="What the simulation says">
        <p>{sheet.proof}</p>
        {sheet.unsafe.length > 0 ? (
          <ul>
            {sheet.unsafe.map((u) => (
              <li key={u.says}>
                {u.says} {u.cure}
              </li>
            ))}
          </ul>
        ) : null}
      </Section>
      {sheet.hazards.length > 0 ? (
        <Section id="hazards" title="What one broken wire could do">
          <p>Ways to run that nobody planned and that the rules do not call workable: power off at once if one is seen.</p>
          <Table heads={["Runs", "Why not", "After"]} rows={sheet.hazards.map((h) => [h.says, h.why, h.after])} css="hazards" />
        </Section>
      ) : null}
      <Section id="checks" title="Electrical checks">
        <ul>
          {sheet.checks.map((c) => (
            <li key={c.says}>
              {c.state === "holds" ? "" : `${c.state}: `}
              {c.says}
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

/** Under which conditions it works, and what is not known yet. */
function Provisos({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  return (
    <>
      {sheet.conditions.length > 0 ? (
        <Section id="conditions" title="It works if">
          <ul>
            {sheet.conditions.map((c) => (
              <Tick key={c}>{c}</Tick>
            ))}
          </ul>
        </Section>
      ) : null}
      {sheet.unknowns.length > 0 ? (
        <Section id="unknowns" title="Not known yet">
          <ul>
            {sheet.unknowns.map((u) => (
              <Tick key={u.says}>
                {u.says} {u.how}
              </Tick>
            ))}
          </ul>
        </Section>
      ) : null}
    </>
  );
}

function PartsSection({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  return (
    <Section id="parts" title="Parts">
      <Table
        heads={["Have", "Number", "Part", "For", "At hand"]}
        rows={sheet.parts.map((p) => [box, p.count, p.name, p.use, p.atHand])}
        css="ticks"
      />
      {sheet.alsoNeeded.length > 0 ? (
        <ul>
          {sheet.alsoNeeded.map((n) => (
            <Tick key={n}>{n}</Tick>
          ))}
        </ul>
      ) : null}
    </Section>
  );
}

function SlotsSection({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  return (
    <Section id="slots" title="Slots and settings">
      <Table
        heads={["Done", "Slot", "Card", "Revision", "May also stand in"]}
        rows={sheet.slots.map((s) => [box, <code key="s">{s.slot}</code>, s.card, s.revision, s.freedom])}
        css="ticks"
      />
      {sheet.jumpers.length > 0 ? (
        <Table
          heads={["Done", "Card", "Setting", "Position", "How"]}
          rows={sheet.jumpers.map((j) => [box, j.card, j.setting, <code key="p">{j.position}</code>, j.how ?? ""])}
          css="ticks"
        />
      ) : null}
      <div class="pair on-screen">
        {view.slotDrawing ? <Drawing figure={view.slotDrawing} /> : null}
        {view.railDrawing ? <Drawing figure={view.railDrawing} /> : null}
      </div>
    </Section>
  );
}

/** What is done to the pins of the device, drawn, and where the resistors go. */
function PinsSection({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  if (sheet.pinWork.length + sheet.pullUps.length === 0) return null;
  return (
    <Section id="pins" title="Pins and resistors">
      <div class="pins">
        <ul>
          {sheet.pinWork.map((w) => (
            <Tick key={w.says}>
              {w.says} {w.why}
            </Tick>
          ))}
          {sheet.pullUps.map((p) => (
            <Tick key={p}>{p}</Tick>
          ))}
        </ul>
        <Faces faces={view.pinDrawings} />
      </div>
    </Section>
  );
}

/** Looked up on a screen: paper has the solder side, the table of wires and the table of banks. */
function DrawnSection({ view }: { readonly view: SheetPage }) {
  return (
    <div class="on-screen">
      <Section id="drawn" title="Drawn">
        <Drawing figure={view.switchDrawing} />
        {view.bankDrawing ? <Drawing figure={view.bankDrawing} /> : null}
      </Section>
      {view.memoryDrawing && view.portDrawing ? (
        <Section id="addresses" title="Addresses">
          <div class="pair">
            <Drawing figure={view.memoryDrawing} />
            <Drawing figure={view.portDrawing} />
          </div>
        </Section>
      ) : null}
    </div>
  );
}

function PanelSection({ view }: { readonly view: SheetPage }) {
  return (
    <Section id="panel" title="Panel">
      {view.panel.svg !== undefined && view.panel.dxf !== undefined ? (
        <>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls sideways, so the keyboard must reach it. */}
          <section class="panel scroll" tabIndex={0} aria-label="The panel at its own size">
            <Svg as="div" svg={view.panel.svg} />
          </section>
          <p>
            <a class="act" href={view.panel.dxf} download="panel.dxf">
              The same as DXF
            </a>
          </p>
        </>
      ) : view.panel.problems.length > 0 ? (
        <ul>
          {view.panel.problems.map((p) => (
            <li key={p}>{p}</li>
          ))}
        </ul>
      ) : (
        <p>Nothing is fixed in a panel.</p>
      )}
    </Section>
  );
}

function BenchSection({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  return (
    <Section id="bench" title="Bench test">
      <ol class="steps">
        {sheet.bench.map((s) => (
          <li key={s.number}>
            <p>
              {box} <strong>Power {s.power}.</strong> {s.does}
            </p>
            <ul>
              {s.expect.map((e) => (
                <Tick key={`${e.position}${e.see}`}>
                  {e.position === undefined ? "" : `Position ${e.position}: `}
                  {e.see}
                  <span class="room"> seen ____________</span>
                </Tick>
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </Section>
  );
}
