// A change-over by hand: in one line what it is, and below it, opened, the machine in each way and the steps between them; printed alone it is
// the card for the lid.
import { useRef, useState } from "preact/hooks";
import type { Repair } from "../../planning/index.js";
import { useApp } from "./app-context.js";
import { Then } from "./bits.js";

export function ByHand({ repair }: { repair: Repair }) {
  const { places } = useApp();
  const [open, setOpen] = useState(false);
  const card = useRef<HTMLDivElement>(null);
  const { lid } = repair;
  return (
    <div class="repair by-hand">
      <p>
        {repair.says} <Then repair={repair} />
      </p>
      {lid ? (
        <details open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
          <summary>Step by step, and a card for the lid</summary>
          {open ? (
            <>
              <div ref={card}>
                <div class="lid">
                  {lid.ways.map(({ title, cards }) => (
                    <OneCard key={title} title={title} as="ul" lines={cards} />
                  ))}
                  {lid.changes.map(({ title, steps }) => (
                    <OneCard key={title} title={title} as="ol" lines={steps} />
                  ))}
                </div>
              </div>
              <p class="acts">
                <button type="button" onClick={() => card.current && printAlone(card.current)}>
                  Print the card for the lid
                </button>
                <a href={places.page("cautions")}>Cautions, before you open the case</a>
              </p>
            </>
          ) : null}
        </details>
      ) : null}
    </div>
  );
}

/** A heading with its lines: cards in any order, steps in theirs. */
function OneCard({ title, as: List, lines }: { readonly title: string; readonly as: "ul" | "ol"; readonly lines: readonly string[] }) {
  return (
    <div class="lid-card">
      <h4>{title}</h4>
      <List>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </List>
    </div>
  );
}

/** Of the whole page this one piece goes to paper. */
function printAlone(piece: HTMLElement): void {
  piece.dataset.alone = "";
  addEventListener("afterprint", () => delete piece.dataset.alone, { once: true });
  print();
}
