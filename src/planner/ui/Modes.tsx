// How it is run: the firmware, or several ways to run it (modes) that share slots and jumpers and differ in firmware and in the cards that are on.
import { cardsOn, copyName, defaultMode } from "../../catalogue/index.js";
import type { Mode } from "../../records/index.js";
import { Part, Pick, standAt } from "./bits.js";
import { ChoiceField } from "./ChoiceField.js";
import { Combobox } from "./Combobox.js";
import { cardName, useDesk } from "./desk.js";

export function Modes() {
  const desk = useDesk();
  const { build, store, answer, shelf } = desk;
  const modes = build.modes ?? [];
  const board = shelf.boards.find((b) => b.id === build.board);
  const choices = answer?.possible ?? [];
  const add = () => {
    const names = ["everyday", "second", "third", "fourth", "fifth", "sixth"];
    const taken = new Set(modes.map((m) => m.id));
    if (modes.length === 0) store.make({ do: "mode", mode: defaultMode });
    const id = names.find((n) => !taken.has(n) && (n !== "everyday" || modes.length > 0)) ?? `mode-${modes.length + 1}`;
    store.make({ do: "mode", mode: { id, name: `${id.charAt(0).toUpperCase()}${id.slice(1)} way` } });
  };
  return (
    <Part id="modes" title="How you run it">
      {board && board.families.length > 1 ? (
        <label>
          Firmware family
          <select value={build.firmware ?? board.families[0]} onChange={(e) => store.make({ do: "family", id: e.currentTarget.value })}>
            {board.families.map((f) => (
              <option key={f} value={f}>
                {shelf.names[`firmware/${f}`] ?? f}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {modes.length < 2
        ? choices
            .filter((c) => c.id.startsWith("firmware:"))
            .map((c) => <ChoiceField key={c.id} choice={c} legend="Firmware version" open="any that works" />)
        : modes.map((m) => <ModeField key={m.id} mode={m} />)}
      <button type="button" onClick={add}>
        {modes.length < 2 ? "Run it in two ways, with a switch" : "Add another way to run it"}
      </button>
      {modes.length < 2 ? (
        <p class="more">
          For cards that exclude each other: one switch changes the firmware and which cards are on. Slots and jumpers stay.
        </p>
      ) : null}
      {modes.length > 1 ? <SwitchParts /> : null}
      <Hand />
    </Part>
  );
}

function ModeField({ mode }: { mode: Mode }) {
  const desk = useDesk();
  const { build, store, answer } = desk;
  const firmware = answer?.possible.find((c) => c.id === `firmware:${mode.id}`);
  const names = build.cards.map(copyName);
  const on = cardsOn(build.cards, mode).map(copyName);
  const set = (change: Partial<Mode>) => store.make({ do: "mode", mode: { id: mode.id, ...change } });
  const toggle = (as: string) => set({ cards: on.includes(as) ? on.filter((o) => o !== as) : [...on, as] });
  return (
    <div class="mode">
      <label>
        Name of this way
        <input type="text" value={mode.name ?? mode.id} onChange={(e) => set({ name: e.currentTarget.value || mode.id })} />
      </label>
      <fieldset class="choice">
        <legend>Cards that are on</legend>
        {names.length === 0 ? <p class="more">Add cards first.</p> : null}
        {names.map((as) => (
          <Pick key={as} type="checkbox" checked={on.includes(as)} onPick={() => toggle(as)}>
            {cardName(desk, as)}
          </Pick>
        ))}
      </fieldset>
      {firmware ? <ChoiceField choice={firmware} legend={`Firmware, ${mode.name ?? mode.id}`} open="any that works" /> : null}
      <Pick type="checkbox" checked={mode.safest ?? false} onPick={() => store.make({ do: "safest", id: mode.id })}>
        The safest: what it should fall into when a wire breaks
      </Pick>
      <button
        type="button"
        class="small"
        onClick={() => {
          store.make({ do: "drop-mode", id: mode.id });
          standAt("modes");
        }}
      >
        Take out<span class="unseen"> {mode.name ?? mode.id}</span>
      </button>
    </div>
  );
}

const switchParts = [
  { what: "device", type: "memory", label: "Memory device" },
  { what: "switch", type: "switch", label: "Switch" },
  { what: "connector", type: "connector", label: "Connector in the panel" },
  { what: "cable", type: "cable", label: "Cable" },
] as const;

/** Parts the owner wants the switch built from; left open, the plan takes what needs the fewest lines and what is at hand. */
function SwitchParts() {
  const { build, shelf, store } = useDesk();
  return (
    <details>
      <summary>
        Parts for the switch
        <span class="more">
          {" "}
          {Object.values(build.switch ?? {})
            .map((p) => shelf.names[`part/${p}`] ?? p)
            .join(", ") || "left to the plan"}
        </span>
      </summary>
      {switchParts.map(({ what, type, label }) => (
        <label key={what}>
          {label}
          <select value={build.switch?.[what] ?? ""} onChange={(e) => store.make({ do: "switch", what, id: e.currentTarget.value })}>
            <option value="">left to the plan</option>
            {shelf.parts
              .filter((p) => p.kind === type)
              .map((p) => (
                <option key={p.id} value={p.id}>
                  {p.name}
                </option>
              ))}
          </select>
        </label>
      ))}
    </details>
  );
}

/** What is in the drawer: it costs nothing, all else is counted as something to get. */
function Hand() {
  const { build, shelf, store } = useDesk();
  const family = shelf.families.find((f) => f.id === (build.firmware ?? shelf.boards.find((b) => b.id === build.board)?.families[0]));
  const hand = build.at_hand ?? {};
  if (!family) return null;
  return (
    <details class="hand">
      <summary>
        What you have at hand
        <span class="more"> {[...(hand.firmware ?? []), ...(hand.parts ?? []).map((p) => shelf.names[`part/${p}`] ?? p)].join(", ")}</span>
      </summary>
      <fieldset class="choice row">
        <legend>Firmware you have, as chips or as files</legend>
        {family.versions.map((v) => {
          const have = hand.firmware?.includes(v) ?? false;
          return (
            <Pick
              key={v}
              type="checkbox"
              checked={have}
              onPick={() => (have ? store.give("firmware", v) : store.make({ do: "have", what: "firmware", id: v }))}
            >
              <code>{v}</code>
            </Pick>
          );
        })}
      </fieldset>
      <Combobox
        label="Parts for a switch: memory devices, switches, connectors, cables"
        offers={shelf.parts.filter((p) => !hand.parts?.includes(p.id)).map((p) => ({ id: p.id, name: p.name, more: p.kind, also: "" }))}
        onPick={(id) => store.make({ do: "have", what: "parts", id })}
      />
      <ul class="plain">
        {(hand.parts ?? []).map((p) => (
          <li key={p}>
            {shelf.names[`part/${p}`] ?? p}{" "}
            <button type="button" class="small" onClick={() => store.give("parts", p)}>
              Take out<span class="unseen"> {shelf.names[`part/${p}`] ?? p}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
