// The ways to run the machine as one grid: cards down, ways across, firmware on top, the safest one marked. On a phone one way at a time.

import { useEffect, useState } from "preact/hooks";
import { copyName } from "../../catalogue/index.js";
import { choiceId } from "../../machine/index.js";
import { itemAt, type Mode } from "../../records/index.js";
import { cardName, useApp } from "./app-context.js";
import { Pick, standAt } from "./bits.js";
import { ChoiceField } from "./ChoiceField.js";
import { FirmwareCell, OnOffCell, OnOffReason } from "./way-cells.js";

export const wayName = (mode: Mode) => mode.name ?? mode.id;

const phone = "(max-width: 39.99rem)";

/** There is room for one way at a time only. */
function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(() => matchMedia(phone).matches);
  useEffect(() => {
    const asked = matchMedia(phone);
    const tell = () => setNarrow(asked.matches);
    asked.addEventListener("change", tell);
    return () => asked.removeEventListener("change", tell);
  }, []);
  return narrow;
}

export function WayGrid({ modes }: { modes: readonly Mode[] }) {
  const app = useApp();
  const narrow = useNarrow();
  const [chosen, setChosen] = useState<string>();
  // What is opened below a row: the reason of a cell, or all versions of a way. One at a time.
  const [opened, setOpened] = useState<string>();
  const at = modes.find((m) => m.id === chosen) ?? modes[0];
  const shown = narrow && at ? [at] : modes;
  const toggle = (id: string) => setOpened(opened === id ? undefined : id);
  const spread = shown.length + 1;
  const firmware = (mode: Mode) => app.answer?.possible.find((c) => c.id === choiceId({ kind: "firmware", mode: mode.id }));
  return (
    <div class="ways-grid">
      {narrow && modes.length > 1 && at ? <Tabs modes={modes} at={at} onPick={setChosen} /> : null}
      <div
        class="across"
        {...(narrow && at && modes.length > 1 ? { role: "tabpanel", id: "way-panel", "aria-labelledby": `way-tab-${at.id}` } : {})}
      >
        <table class={shown.length < 3 ? "grid" : shown.length < 5 ? "grid wide" : "grid wide many"}>
          <thead>
            <tr>
              <td>
                <span class="unseen">Card</span>
              </td>
              {shown.map((m) => (
                <th key={m.id} scope="col">
                  <Head mode={m} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Firmware</th>
              {shown.map((m) => (
                <td key={m.id}>
                  <FirmwareCell
                    mode={m}
                    choice={firmware(m)}
                    open={opened === choiceId({ kind: "firmware", mode: m.id })}
                    onOpen={() => toggle(choiceId({ kind: "firmware", mode: m.id }))}
                  />
                </td>
              ))}
            </tr>
            {shown.map((m) => {
              const choice = opened === choiceId({ kind: "firmware", mode: m.id }) ? firmware(m) : undefined;
              return choice ? (
                <Below key={`firmware ${m.id}`} spread={spread}>
                  <ChoiceField choice={choice} legend={`Firmware, ${wayName(m)}`} open="any that works" />
                </Below>
              ) : null;
            })}
            {app.build.cards.map(copyName).map((as) => (
              <Row key={as} as={as} modes={shown} opened={opened} onOpen={toggle} />
            ))}
            {modes.length > 1 ? <Safest modes={modes} shown={shown} /> : null}
          </tbody>
        </table>
      </div>
    </div>
  );
}

function Below({ spread, children }: { spread: number; children: preact.ComponentChildren }) {
  return (
    <tr>
      <td colSpan={spread}>{children}</td>
    </tr>
  );
}

interface RowProps {
  readonly as: string;
  readonly modes: readonly Mode[];
  readonly opened?: string | undefined;
  readonly onOpen: (id: string) => void;
}

function Row({ as, modes, opened, onOpen }: RowProps) {
  const app = useApp();
  const name = cardName(app, as);
  const asked = modes.find((m) => opened === choiceId({ kind: "on", mode: m.id, card: as }));
  return (
    <>
      <tr>
        <th scope="row">{name}</th>
        {modes.map((m) => (
          <td key={m.id}>
            <OnOffCell
              mode={m}
              as={as}
              name={name}
              open={m === asked}
              onOpen={() => onOpen(choiceId({ kind: "on", mode: m.id, card: as }))}
            />
          </td>
        ))}
      </tr>
      {asked ? (
        <Below spread={modes.length + 1}>
          <OnOffReason mode={asked} as={as} name={name} />
        </Below>
      ) : null}
    </>
  );
}

function Head({ mode }: { mode: Mode }) {
  const { store } = useApp();
  const name = wayName(mode);
  return (
    <>
      <label>
        <span class="unseen">Name of this way</span>
        <input
          type="text"
          class="way-name"
          value={name}
          onChange={(e) => store.make({ do: "mode", mode: { id: mode.id, name: e.currentTarget.value.trim() || mode.id } })}
        />
      </label>
      <button
        type="button"
        class="small"
        onClick={() => {
          store.make({ do: "drop-mode", id: mode.id });
          standAt("modes");
        }}
      >
        Take out<span class="unseen"> {name}</span>
      </button>
    </>
  );
}

/** One way at most is the safest; with none named, the plan takes the one with the fewest cards on. */
function Safest({ modes, shown }: { modes: readonly Mode[]; shown: readonly Mode[] }) {
  const { store } = useApp();
  const safest = modes.find((m) => m.safest);
  const open = (
    <Pick type="radio" name="safest" checked={safest === undefined} onPick={() => safest && store.make({ do: "safest", id: safest.id })}>
      left open
    </Pick>
  );
  // Where one way is shown at a time, its two answers stand together.
  const together = shown.length === 1;
  return (
    <tr>
      <th scope="row" class="falls">
        Falls into when a wire breaks
        {together ? null : open}
      </th>
      {shown.map((m) => (
        <td key={m.id}>
          <Pick type="radio" name="safest" checked={m === safest} onPick={() => m !== safest && store.make({ do: "safest", id: m.id })}>
            <span class="unseen">{wayName(m)}: </span>safest
          </Pick>
          {together ? open : null}
        </td>
      ))}
    </tr>
  );
}

/** Arrow keys go from tab to tab and show what they come to, as in any row of tabs. */
function Tabs({ modes, at, onPick }: { modes: readonly Mode[]; at: Mode; onPick: (id: string) => void }) {
  const place = modes.indexOf(at);
  const go = (to: number) => {
    const next = itemAt(modes, (to + modes.length) % modes.length);
    onPick(next.id);
    document.getElementById(`way-tab-${next.id}`)?.focus();
  };
  const byKey: Readonly<Record<string, () => void>> = {
    ArrowRight: () => go(place + 1),
    ArrowLeft: () => go(place - 1),
    Home: () => go(0),
    End: () => go(modes.length - 1),
  };
  return (
    <div role="tablist" aria-label="Ways to run it">
      {modes.map((m) => (
        <button
          key={m.id}
          type="button"
          role="tab"
          id={`way-tab-${m.id}`}
          aria-selected={m === at}
          aria-controls="way-panel"
          tabIndex={m === at ? 0 : -1}
          onClick={() => onPick(m.id)}
          onKeyDown={(e) => {
            const move = byKey[e.key];
            if (!move) return;
            e.preventDefault();
            move();
          }}
        >
          {wayName(m)}
        </button>
      ))}
    </div>
  );
}
