// A change-over by hand: in one line what it is, and below it, opened, the machine in each way and the steps between them; printed alone it is
// the card for the lid.
import { useRef, useState } from "preact/hooks";
import type { Repair } from "../../planning/index.js";
import { Then } from "./bits.js";
import { useDesk } from "./desk.js";

export function ByHand({ repair }: { repair: Repair }) {
  const { places } = useDesk();
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
                  {lid.ways.map((way) => (
                    <div key={way.title} class="lid-card">
                      <h4>{way.title}</h4>
                      <ul>
                        {way.cards.map((line) => (
                          <li key={line}>{line}</li>
                        ))}
                      </ul>
                    </div>
                  ))}
                  {lid.changes.map((change) => (
                    <div key={change.title} class="lid-card">
                      <h4>{change.title}</h4>
                      <ol>
                        {change.steps.map((step) => (
                          <li key={step}>{step}</li>
                        ))}
                      </ol>
                    </div>
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

/** Of the whole page this one piece goes to paper. */
function printAlone(piece: HTMLElement): void {
  piece.dataset.alone = "";
  addEventListener("afterprint", () => delete piece.dataset.alone, { once: true });
  print();
}
