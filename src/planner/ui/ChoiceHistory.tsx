// What you have chosen, one line each: any of them can be taken back, in any order; the others stay.

import { labelCopies } from "../../catalogue/index.js";
import { type ChoiceValue, choiceOf } from "../../machine/index.js";
import { sizeText } from "../../records/index.js";
import { listText } from "../../words/index.js";
import type { Move } from "../state/moves.js";
import { type AppContext, cardName, useApp } from "./app-context.js";
import { Part, standAt } from "./bits.js";

export function moveWords(app: AppContext, move: Move): string {
  const name = (id: string) => app.catalogue.names[id] ?? id.split("/")[1] ?? id;
  switch (move.do) {
    case "board":
      return `Board: ${name(`board/${move.board}`)}`;
    case "choose":
      return choiceWords(app, move.id, move.value);
    case "add":
      return `${cardName(app, move.as ?? move.card)} added`;
    case "drop":
      return `${calledBefore(app, move.as)} taken out`;
    case "mode":
      return `Way to run it: ${move.mode.name ?? app.build.modes?.find((m) => m.id === move.mode.id)?.name ?? move.mode.id}`;
    case "drop-mode":
      return `Way to run it taken out: ${move.id}`;
    case "safest":
      return `Safest way: ${app.build.modes?.find((m) => m.id === move.id)?.name ?? move.id}`;
    case "have":
      return `At hand: ${(move.count ?? 1) > 1 ? `${move.count} of ` : ""}${move.what === "firmware" ? move.id : name(`${move.what === "cards" ? "card" : "part"}/${move.id}`)}`;
    case "family":
      return `Firmware family: ${name(`firmware/${move.id}`)}`;
    case "switch":
      return move.id === "" ? "A part of the switch left to the plan" : `Part for the switch: ${name(`part/${move.id}`)}`;
    case "stands":
      return "The machine stands as it was chosen until then";
    case "all":
      return move.says;
  }
}

/** What a copy was called in the machine it was taken out of. */
function calledBefore(app: AppContext, as: string): string {
  const nameOf = (card: string) => app.catalogue.names[`card/${card}`] ?? card;
  return labelCopies(app.store.state.base.cards, nameOf).get(as) ?? nameOf(as);
}

function choiceWords(app: AppContext, id: string, pinned: ChoiceValue): string {
  const ref = choiceOf(id);
  const value = typeof pinned === "string" ? pinned : listText(pinned, "or");
  switch (ref?.kind) {
    case "revision":
      return `Board is revision ${value}`;
    case "memory":
      return `Memory: ${sizeText(Number(value))}`;
    case "firmware": {
      const mode = (app.build.modes?.length ?? 0) > 1 ? app.build.modes?.find((m) => m.id === ref.mode) : undefined;
      return `Firmware ${value}${mode ? `, ${mode.name ?? mode.id}` : ""}`;
    }
    case "on": {
      const mode = app.build.modes?.find((m) => m.id === ref.mode);
      return value === "on-or-off"
        ? `${cardName(app, ref.card)} in ${mode?.name ?? ref.mode}: does not matter`
        : `${cardName(app, ref.card)} ${value} in ${mode?.name ?? ref.mode}`;
    }
    case "slot":
      return `${cardName(app, ref.card)} in ${value}`;
    case "card-revision":
      return `${cardName(app, ref.card)} is revision ${value}`;
    case "setting":
      return `${cardName(app, ref.card)}: ${ref.setting} at ${value}`;
    default:
      return value;
  }
}

export function ChoiceHistory() {
  const app = useApp();
  const { store } = app;
  const { moves } = store.state;
  if (moves.length === 0) return null;
  return (
    <Part id="said-so-far" title="What you chose">
      <ul class="said">
        {moves.map((move, i) => {
          const says = moveWords(app, move);
          return (
            <li key={`${i}-${says}`}>
              <span>{says}</span>{" "}
              <button
                type="button"
                class="small"
                onClick={() => {
                  store.takeBack(i);
                  standAt(moves.length > 1 ? "said-so-far" : "machine");
                }}
              >
                Take back<span class="unseen"> {says}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </Part>
  );
}
