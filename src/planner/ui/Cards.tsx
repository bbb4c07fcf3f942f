// The cards: a field to add one, and every card of the build with its slot, revision and settings.
import { useState } from "preact/hooks";
import { copyName } from "../../catalogue/index.js";
import { choiceOf, copyOfChoice, countAtHand, withoutCard } from "../../machine/index.js";
import type { OpenChoice, Purchase } from "../../planning/index.js";
import type { CardSummary } from "../worker/catalogue-summary.js";
import { cardName, useApp } from "./app-context.js";
import { Mark, Part, Pick, standAt } from "./bits.js";
import { ChoiceField } from "./ChoiceField.js";
import { Combobox, type Offer } from "./Combobox.js";
import { Deferred } from "./deferred.js";
import { Fits } from "./Fits.js";

export function Cards() {
  const app = useApp();
  const { catalogue, build, store, bench } = app;
  const offers = catalogue.cards.map((c): Offer => ({ id: c.id, name: c.name, more: `${c.maker} ${c.model}, ${c.does.join(", ")}` }));
  return (
    <Part id="cards" title="Cards in it, and wanted">
      <Combobox
        label="Add a card"
        hint="By name, maker, model, or what it does: disk, network, clock."
        offers={offers}
        find={(typed) => bench.ask("find", { typed })}
        onPick={(card) => store.make({ do: "add", card })}
      />
      {build.cards.length === 0 ? null : (
        <ul class="held">
          {build.cards.map((c) => (
            <Deferred
              key={copyName(c)}
              order={4}
              piece={CardLine}
              given={{ as: copyName(c), card: catalogue.cards.find((s) => s.id === c.card) }}
            />
          ))}
        </ul>
      )}
      {build.board ? <Fits /> : null}
    </Part>
  );
}

function CardLine({ as, card }: { as: string; card?: CardSummary | undefined }) {
  const app = useApp();
  const { store, answer, places } = app;
  const [open, setOpen] = useState(false);
  const own = (answer?.possible ?? []).filter((c) => copyOfChoice(c.id) === as);
  const pinned = own.filter((c) => c.chosen !== undefined);
  const closed = own.filter((c) => c.values.every((v) => v.verdict === "ruled-out"));
  const name = cardName(app, as);
  // What it can be set to comes with the answer; its line is there before, so that nothing moves when it does.
  const soon = app.build.board !== "" && !(answer && app.answered.cards.some((c) => copyName(c) === as));
  return (
    <li class="card">
      <p class="name">
        <a href={places.record({ kind: "card", id: card?.id ?? as, pointer: "" })}>{name}</a>
        <button
          type="button"
          class="small"
          onClick={() => {
            store.make({ do: "drop", as });
            standAt("cards");
          }}
        >
          Take out<span class="unseen"> {name}</span>
        </button>
      </p>
      {own.length > 0 ? (
        <details open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
          <summary>
            Slot, revision and settings<span class="unseen"> of {name}</span>
            <span class="more">
              {" "}
              {pinned.length > 0 ? pinned.map((c) => `${short(c)} ${labelOf(c)}`).join(", ") : `${own.length} left open`}
              {closed.length > 0 && answer?.verdict !== "ruled-out" ? `; nothing fits for ${closed.map(short).join(", ")}` : ""}
            </span>
          </summary>
          {open ? own.map((c) => <ChoiceField key={c.id} choice={c} legend={legendOf(c, card)} how={howOf(c, card)} />) : null}
        </details>
      ) : soon ? (
        <p class="soon more">Slot, revision and settings</p>
      ) : null}
      <p class="acts">
        <AtHand as={as} id={card?.id ?? as} name={name} />
        <button type="button" class="small" onClick={() => store.make({ do: "add", card: card?.id ?? as })}>
          Another<span class="unseen"> {name}</span>
        </button>
        {app.build.board ? <Buying as={as} card={card?.id ?? as} /> : null}
      </p>
    </li>
  );
}

/** Whether a card is at hand; of several copies how many are, asked at the first of them. */
function AtHand({ as, id, name }: { as: string; id: string; name: string }) {
  const { build, store, catalogue } = useApp();
  const copies = build.cards.filter((c) => c.card === id);
  const count = countAtHand(build, id);
  if (copies.length < 2)
    return (
      <Pick
        type="checkbox"
        checked={count > 0}
        onPick={() => (count > 0 ? store.give("cards", id) : store.make({ do: "have", what: "cards", id }))}
      >
        I have it<span class="unseen"> {name}</span>
      </Pick>
    );
  const [first] = copies;
  if (!first || copyName(first) !== as) return null;
  return (
    <label>
      Of the {copies.length} <span class="unseen">{catalogue.names[`card/${id}`] ?? id} </span>I have{" "}
      <select
        value={String(Math.min(count, copies.length))}
        onChange={({ currentTarget: { value } }) =>
          value === "0" ? store.give("cards", id) : store.make({ do: "have", what: "cards", id, count: Number(value) })
        }
      >
        {[{ copies: 0 }, ...copies].map((_, n) => (
          <option key={String(n)} value={String(n)}>
            {n}
          </option>
        ))}
      </select>
    </label>
  );
}

function legendOf(choice: OpenChoice, card?: CardSummary): string {
  const ref = choiceOf(choice.id);
  if (ref?.kind === "slot") return "Slot";
  if (ref?.kind === "card-revision") return "Revision of the card";
  const setting = ref?.kind === "setting" ? card?.settings.find((s) => s.id === ref.setting) : undefined;
  return setting ? `${setting.id}, ${setting.name} (${setting.by})` : choice.label;
}

function howOf(choice: OpenChoice, card?: CardSummary): Record<string, string> | undefined {
  if (choiceOf(choice.id)?.kind !== "card-revision") return undefined;
  return Object.fromEntries((card?.revisions ?? []).map((r) => [r.id, r.tell]));
}

function short(choice: OpenChoice): string {
  const ref = choiceOf(choice.id);
  if (ref?.kind === "setting") return ref.setting;
  return ref?.kind === "slot" ? "slot" : ref?.kind === "card-revision" ? "revision" : "";
}

const labelOf = (c: OpenChoice) => c.values.find((v) => v.value === c.chosen)?.value ?? c.chosen;

/** What buying this card for this machine would mean: under which firmware, what changes, what else to get. */
function Buying({ as, card }: { as: string; card: string }) {
  const { build, solve } = useApp();
  const [told, setTold] = useState<Purchase | "asked" | undefined>();
  const ask = () => {
    if (told) return setTold(undefined);
    setTold("asked");
    const machine = withoutCard(build, as);
    solve
      .ask("buy", { build: machine, card })
      .then((p) => setTold(p.kind === "purchase" ? p : undefined))
      .catch(() => setTold(undefined));
  };
  return (
    <>
      <button type="button" class="small" aria-expanded={told !== undefined} onClick={ask}>
        Before you buy
      </button>
      {told === "asked" ? (
        <span class="because more" role="status">
          Working it out.
        </span>
      ) : null}
      {told && told !== "asked" ? (
        <span class="because" role="status">
          <span class="block">{told.says}</span>
          {told.versions.length > 0 ? (
            <span class="block">
              By firmware:{" "}
              {told.versions.map((v) => (
                <span key={v.version} class="version">
                  <code>{v.version}</code> <Mark verdict={v.verdict} evidence={v.evidence} />
                </span>
              ))}
            </span>
          ) : null}
          {told.changes.length > 0 ? <span class="block">To change: {told.changes.join("; ")}.</span> : null}
          {told.shopping.length > 0 ? (
            <span class="block">To get: {told.shopping.map((s) => `${s.what} (${s.why})`).join("; ")}.</span>
          ) : null}
          {told.risks.length > 0 ? <span class="block">Risks: {told.risks.join(" ")}</span> : null}
        </span>
      ) : null}
    </>
  );
}
