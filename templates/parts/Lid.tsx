// The card for the lid alone, made for paper: cautions, what is in the machine in each way, the steps between them.
import type { LidPage } from "../../src/pages/index.js";
import { Section } from "./bits.js";
import { Cautions, LidCard, Table, Tick } from "./sheet-bits.js";

export function Lid({ view }: { readonly view: LidPage }) {
  return (
    <div class="sheet">
      <p class="says">{view.why}</p>
      <Cautions cautions={view.cautions} />
      <Section id="ways" title="The machine in each way">
        {view.ways.map((way) => (
          <div key={way.title}>
            <h3>{way.title}</h3>
            <ul>
              {way.cards.map((card) => (
                <Tick key={card}>{card}</Tick>
              ))}
            </ul>
            {way.conditions.length > 0 ? (
              <ul>
                {way.conditions.map((condition) => (
                  <Tick key={condition}>{condition}</Tick>
                ))}
              </ul>
            ) : null}
          </div>
        ))}
      </Section>
      <LidCard view={view.changeOver} title="Changed over by hand" />
      {view.costs.rows.length > 0 ? (
        <Section id="costs" title="What this and the other ways out cost">
          <Table heads={view.costs.heads} rows={view.costs.rows} />
        </Section>
      ) : null}
    </div>
  );
}
