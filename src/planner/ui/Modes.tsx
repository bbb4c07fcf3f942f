// How it is run: the firmware, or several ways to run it (modes) that share slots and jumpers and differ in firmware and in the cards that are on.

import { defaultMode } from "../../catalogue/index.js";
import { choiceOf } from "../../machine/index.js";
import { useApp } from "./app-context.js";
import { Part, Pick } from "./bits.js";
import { ChoiceField } from "./ChoiceField.js";
import { Combobox } from "./Combobox.js";
import { WayGrid, wayName } from "./WayGrid.js";

export function Modes() {
  const app = useApp();
  const { build, store, answer, catalogue } = app;
  const modes = build.modes ?? [];
  const board = catalogue.boards.find((b) => b.id === build.board);
  const choices = answer?.possible ?? [];
  // A new way begins with every card off: that changes nothing for the others, and the grid shows which of them could be on.
  const add = () => {
    const before = modes.length > 0 ? modes : [{ ...defaultMode, name: "Way 1" }];
    const taken = before.flatMap((m) => [m.id, wayName(m)]);
    let at = before.length + 1;
    while (taken.includes(`way-${at}`) || taken.includes(`Way ${at}`)) at += 1;
    const added = { id: `way-${at}`, name: `Way ${at}`, cards: [] };
    store.make({ do: "all", says: `${added.name} added`, edits: [{ modes: [...before, added] }] });
  };
  return (
    <Part id="modes" title="How you run it">
      {board && board.families.length > 1 ? (
        <label>
          Firmware family{" "}
          <select value={build.firmware ?? board.families[0]} onChange={(e) => store.make({ do: "family", id: e.currentTarget.value })}>
            {board.families.map((f) => (
              <option key={f} value={f}>
                {catalogue.names[`firmware/${f}`] ?? f}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {modes.length > 1 || modes.some((m) => m.cards || m.on_or_off) ? (
        <WayGrid modes={modes} />
      ) : (
        choices
          .filter((c) => choiceOf(c.id)?.kind === "firmware")
          .map((c) => <ChoiceField key={c.id} choice={c} legend="Firmware version" open="any that works" />)
      )}
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

const switchParts = [
  { what: "device", type: "memory", label: "Memory device" },
  { what: "switch", type: "switch", label: "Switch" },
  { what: "connector", type: "connector", label: "Connector in the panel" },
  { what: "cable", type: "cable", label: "Cable" },
] as const;

/** Parts the owner wants the switch built from; left open, the plan takes what needs the fewest lines and what is at hand. */
function SwitchParts() {
  const { build, catalogue, store } = useApp();
  return (
    <details>
      <summary>
        Parts for the switch
        <span class="more">
          {" "}
          {Object.values(build.switch ?? {})
            .map((p) => catalogue.names[`part/${p}`] ?? p)
            .join(", ") || "left to the plan"}
        </span>
      </summary>
      {switchParts.map(({ what, type, label }) => (
        <label key={what}>
          {label}
          <select value={build.switch?.[what] ?? ""} onChange={(e) => store.make({ do: "switch", what, id: e.currentTarget.value })}>
            <option value="">left to the plan</option>
            {catalogue.parts
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
  const { build, catalogue, store } = useApp();
  const family = catalogue.families.find(
    (f) => f.id === (build.firmware ?? catalogue.boards.find((b) => b.id === build.board)?.families[0]),
  );
  const hand = build.at_hand ?? {};
  if (!family) return null;
  return (
    <details class="hand">
      <summary>
        What you have at hand
        <span class="more">
          {" "}
          {[...(hand.firmware ?? []), ...(hand.parts ?? []).map((p) => catalogue.names[`part/${p}`] ?? p)].join(", ")}
        </span>
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
        offers={catalogue.parts.filter((p) => !hand.parts?.includes(p.id)).map((p) => ({ id: p.id, name: p.name, more: p.kind }))}
        onPick={(id) => store.make({ do: "have", what: "parts", id })}
      />
      <ul class="plain">
        {(hand.parts ?? []).map((p) => (
          <li key={p}>
            {catalogue.names[`part/${p}`] ?? p}{" "}
            <button type="button" class="small" onClick={() => store.give("parts", p)}>
              Take out<span class="unseen"> {catalogue.names[`part/${p}`] ?? p}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
