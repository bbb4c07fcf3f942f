// The first page of the sheet is the machine: the switch as one solders it, its positions, the banks of the device, the order of the work,
// and the cautions that bear on it most.
import type { SheetPage } from "../../src/pages/index.js";
import { Drawing, Section } from "./bits.js";
import { box, Caution, Table, Tick } from "./sheet-bits.js";

export function FirstPage({ view }: { readonly view: SheetPage }) {
  const { sheet } = view;
  const further = sheet.cautions.filter((c) => !sheet.today.includes(c));
  return (
    <>
      <Section id="switch" title="Switch">
        <Drawing figure={view.backDrawing} />
        <p>
          Bold numbers are wires, large dots commons, heavy lines links; empty dots have no wire. Makes differ in where a terminal sits: its
          mark counts, and the meter.
        </p>
        <Table
          heads={["Position", "Mode", "Firmware", "Cards on", "Contacts made", "Bank lines"]}
          rows={sheet.contacts.map((c) => [<code key="p">{c.position}</code>, c.mode, c.version, c.on, c.joined, c.levels])}
        />
      </Section>
      <BurnSection view={view} />
      <div class="beside">
        <Section id="order" title="Order of work">
          <ol class="order">
            {sheet.order.map((o) => (
              <li key={o}>{o}</li>
            ))}
          </ol>
          {sheet.toDo.length > 0 ? (
            <ul>
              {sheet.toDo.map((t) => (
                <Tick key={t}>{t}</Tick>
              ))}
            </ul>
          ) : null}
        </Section>
        <Section id="cautions" title="Before you start">
          <ul class="cautions">
            {sheet.today.map((c) => (
              <Caution key={c.id} caution={c} />
            ))}
          </ul>
          {further.length > 0 ? (
            <p>
              Read on the last page, before the work:{" "}
              {further.map((c) => (c.severity === "stop" ? `${c.title} (stop)` : c.title)).join(", ")}.
            </p>
          ) : null}
          <p>The rules and the licensed trades where you live come before anything on this sheet.</p>
        </Section>
      </div>
    </>
  );
}

/** Those that do not stand on the first page. */
export function FurtherCautions({ sheet }: Pick<SheetPage, "sheet">) {
  const further = sheet.cautions.filter((c) => !sheet.today.includes(c));
  if (further.length === 0) return null;
  return (
    <Section id="further-cautions" title="Further cautions">
      <ul class="cautions in-two">
        {further.map((c) => (
          <Caution key={c.id} caution={c} />
        ))}
      </ul>
    </Section>
  );
}

function BurnSection({ view }: { readonly view: SheetPage }) {
  const { burn } = view.sheet;
  if (!burn) return null;
  return (
    <Section id="burn" title="Memory device">
      <p>
        {burn.device}, {burn.grade}, for {burn.sockets.join(" and ")}. Fill what is left with {burn.fill}.{" "}
        {burn.checksum === undefined ? (
          "CRC-32 of the burned device: ________________ (write down what burn tells)."
        ) : (
          <>
            CRC-32 of the whole device: <code>{burn.checksum}</code>.
          </>
        )}
      </p>
      <Table
        heads={["Burned", "Bank", "From", "Size", "Image", "Image CRC-32", "Position"]}
        rows={burn.banks.map((b) => [
          box,
          b.bank,
          <code key="o">{b.offset}</code>,
          b.size,
          `${b.version}${b.repeats > 1 ? `, ${b.repeats} times over` : ""}`,
          <code key="c">{b.crc32}</code>,
          b.positions || b.note,
        ])}
        css="ticks"
      />
    </Section>
  );
}
