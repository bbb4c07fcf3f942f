// Files for the bench of a switched machine: wires, parts, continuity list and faults as CSV for a spreadsheet, labels for both ends of
// every wire and for the panel as a page to print. They say what the build sheet says.
import { h } from "preact";
import { renderToStaticMarkup } from "preact-render-to-string";
import type { WiringPlan } from "../wiring/index.js";
import { csv } from "./exports/csv.js";

export interface BenchFile {
  readonly name: string;
  readonly content: string;
}

/** `title` names the machine on the page of labels; `notice` is what is wrong with the records, if anything. */
export function benchFiles(plan: WiringPlan, title: string, notice?: string): BenchFile[] {
  const known = (value: number | "unknown" | undefined) => (value === undefined || value === "unknown" ? "" : Number(value.toFixed(3)));
  const foundAt = new Map(plan.finding.flatMap((row) => row.faults.map((id) => [id, row.at] as const)));
  return [
    {
      name: "wires.csv",
      content: csv(
        ["wire", "label", "from", "to", "where", "conductor", "current_mA", "length_m", "drop_mV"],
        plan.wires.map((w) => [
          w.number,
          w.label,
          w.fromText,
          w.toText,
          w.run,
          w.conductor ?? "",
          known(w.current_mA),
          known(w.length_m),
          known(w.drop_mV),
        ]),
        notice,
      ),
    },
    {
      name: "parts.csv",
      content: csv(
        ["count", "part", "name", "for", "at_hand"],
        plan.parts.map((p) => [p.count, p.part ?? "", p.name, p.use, p.part === undefined ? "" : p.atHand ? "yes" : "no"]),
        notice,
      ),
    },
    {
      name: "continuity.csv",
      content: csv(
        ["position", "kind", "wire", "label", "from", "to", "must", "ohms"],
        plan.continuity.map((r) => [r.position ?? "every", r.kind, r.wire ?? "", r.label ?? "", r.from, r.to, r.must, r.ohms ?? ""]),
        notice,
      ),
    },
    {
      name: "faults.csv",
      content: csv(
        ["seen", "may_look_right", "fault", "what_to_do", "found_first_by", "to_tell_apart"],
        [
          ...plan.faults.groups.flatMap((g) =>
            g.faults.map((f) => [
              g.says,
              g.mayLookRight ? "yes" : "no",
              f.says,
              f.fix,
              foundAt.get(f.id) ?? "",
              g.measurements
                .flatMap((m) => m.outcomes.filter((o) => o.faults.includes(f.id)).map((o) => `${m.says} ${o.sees}`))
                .join(" / "),
            ]),
          ),
          ...plan.faults.silent.map((f) => ["nothing", "yes", f.says, f.fix, foundAt.get(f.id) ?? "", ""]),
        ],
        notice,
      ),
    },
    { name: "labels.html", content: labels(plan, title, notice) },
  ];
}

const style = `body{font:3mm/1.25 sans-serif;margin:10mm}h1{font-size:4mm}h2{font-size:3.4mm}
ul{list-style:none;padding:0;display:flex;flex-wrap:wrap;gap:1.5mm}li{border:.2mm solid;padding:1mm 1.5mm;break-inside:avoid}
b{font-size:4mm}.wire li{width:40mm;min-height:8.5mm}.panel li{font-size:4mm}`;

/** Two labels a wire: on each the number, the label, and where this end goes. */
function labels(plan: WiringPlan, title: string, notice: string | undefined): string {
  const item = (key: string, number: string, words: string) => h("li", { key }, h("b", null, number), ` ${words}`);
  const wires = plan.wires.flatMap((w) => [
    item(`${w.number}a`, String(w.number), `${w.label}: ${w.fromText}`),
    item(`${w.number}b`, String(w.number), `${w.label}: ${w.toText}`),
  ]);
  const positions = plan.contacts.map((c) => {
    const mode = plan.modes.find((m) => m.id === c.mode);
    return item(c.position, c.position, `${mode?.name ?? c.mode}, ${c.version}`);
  });
  const connectors = plan.connectors.filter((c) => c.panel).map((c) => item(c.id, c.id, c.name));
  const page = h(
    "html",
    { lang: "en" },
    h(
      "head",
      null,
      h("meta", { charset: "utf-8" }),
      h("title", null, `Labels: ${title}`),
      h("style", { dangerouslySetInnerHTML: { __html: style } }),
    ),
    h(
      "body",
      null,
      h("h1", null, `Labels: ${title}`),
      notice === undefined ? null : h("p", { role: "note" }, notice),
      h("h2", null, "Wires, both ends"),
      h("ul", { class: "wire" }, wires),
      h("h2", null, "Panel"),
      h("ul", { class: "panel" }, [...positions, ...connectors]),
      h("p", null, "Power off before switching."),
    ),
  );
  return `<!doctype html>\n${renderToStaticMarkup(page)}\n`;
}
