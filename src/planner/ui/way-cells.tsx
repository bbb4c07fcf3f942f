// The cells of the grid of ways: which firmware a way runs, and whether a card is on in it. Each shows at once what is possible there.

import { cardsOn, cardsOnOrOff, copyName } from "../../catalogue/index.js";
import { choiceId } from "../../machine/index.js";
import type { OnOff, OpenChoice } from "../../planning/index.js";
import type { Mode } from "../../records/index.js";
import { verdictWords } from "../../words/index.js";
import { useApp } from "./app-context.js";
import { Mark, Pick } from "./bits.js";
import { Because } from "./ChoiceField.js";

interface CellProps {
  readonly mode: Mode;
  /** What lies behind the cell is opened below its row. */
  readonly open: boolean;
  readonly onOpen: () => void;
}

const nameOf = (mode: Mode) => mode.name ?? mode.id;

export function FirmwareCell({ mode, choice, open, onOpen }: CellProps & { choice?: OpenChoice | undefined }) {
  const { store } = useApp();
  if (!choice) return null;
  // When no version works at all, the answer says why; a word at every one would only repeat it.
  const none = choice.values.every((v) => v.verdict === "ruled-out");
  const fitting = choice.values.filter((v) => v.verdict === "workable");
  const any = fitting.length > 0 && fitting.length <= 3 ? `any: ${fitting.map((v) => v.label).join(", ")}` : "any that works";
  return (
    <>
      <select
        aria-label={`Firmware of ${nameOf(mode)}`}
        value={mode.firmware ?? ""}
        onChange={({ currentTarget: { value } }) =>
          value === "" ? store.unpin(choice.id) : store.make({ do: "choose", id: choice.id, value })
        }
      >
        <option value="">{any}</option>
        {choice.values.map((v) => (
          <option key={v.value} value={v.value}>
            {v.label}
            {none || v.verdict === "workable" ? "" : ` (${verdictWords[v.verdict].word})`}
          </option>
        ))}
      </select>
      {!none && choice.values.some((v) => v.verdict === "ruled-out") ? (
        <button type="button" class="whynot" aria-expanded={open} onClick={onOpen}>
          Why not others?<span class="unseen"> Firmware of {nameOf(mode)}</span>
        </button>
      ) : null}
    </>
  );
}

interface OnOffProps {
  readonly mode: Mode;
  readonly as: string;
  /** What the card is called. */
  readonly name: string;
}

interface CellState {
  readonly on: boolean;
  /** It does not matter whether it is on; `taken` is what the answer takes it as. */
  readonly either: boolean;
  readonly taken?: "on" | "off";
  /** Nothing switches it off. */
  readonly always: boolean;
  /** What switching it over would come to. */
  readonly other?: OnOff["other"];
}

/** What is known of the cell; nothing while the build has moved on from what was answered. */
function useOnOff(mode: Mode, as: string): CellState {
  const { build, onOff, answer, answered } = useApp();
  const either = cardsOnOrOff(build.cards, mode).some((c) => copyName(c) === as);
  const on = cardsOn(build.cards, mode).some((c) => copyName(c) === as);
  const told = onOff?.find((c) => c.mode === mode.id && c.card === as);
  const always = told?.now === "always";
  const taken = either && answered === build ? answer?.taken.find((t) => t.mode === mode.id && t.card === as) : undefined;
  const now = either ? "either" : on ? "on" : "off";
  return {
    on,
    either,
    always,
    ...(taken ? { taken: taken.on ? "on" : "off" } : {}),
    ...(told?.now === now && told.other ? { other: told.other } : {}),
  };
}

export function OnOffCell({ mode, as, name, open, onOpen }: CellProps & OnOffProps) {
  const { store, answer } = useApp();
  const { on, either, taken, always, other } = useOnOff(mode, as);
  const none = answer?.verdict === "ruled-out";
  const where = `${name} in ${nameOf(mode)}`;
  if (always)
    return (
      <div class="cell">
        <span class="always">always on</span>
        <button type="button" class="whynot" aria-expanded={open} onClick={onOpen}>
          Why?<span class="unseen"> {where} is always on</span>
        </button>
      </div>
    );
  const no = !on && !either && !none && other === "ruled-out";
  const choose = (value: "on" | "off" | "on-or-off") =>
    store.make({ do: "choose", id: choiceId({ kind: "on", mode: mode.id, card: as }), value });
  return (
    <div class="cell">
      <Pick type="checkbox" checked={on} mixed={either} onPick={() => choose(on ? "off" : "on")}>
        <span class="unseen">
          {where}: {on || either ? "" : "off, "}
        </span>
        {either ? (
          `does not matter${taken === undefined ? "" : `: ${taken}`}`
        ) : no ? (
          <Mark verdict="ruled-out" word={false} />
        ) : (
          stateOf(on, none, other)
        )}
      </Pick>
      {no ? (
        <button type="button" class="whynot" aria-expanded={open} onClick={onOpen}>
          Why not?<span class="unseen"> {where}</span>
        </button>
      ) : null}
      {either || no ? null : (
        <button type="button" class="small" onClick={() => choose("on-or-off")}>
          Does not matter<span class="unseen"> {where}</span>
        </button>
      )}
    </div>
  );
}

/** What it is, or could be. Of a machine that works nothing is said of what could be off: it was wanted on. */
function stateOf(on: boolean, none: boolean, other: OnOff["other"]): string {
  if (none) return other === "workable" ? (on ? "on; off, it works" : "on, it works") : on ? "on" : "";
  if (on) return "on";
  return other === "workable" ? "could be on" : other === "unknown" ? "on: not known" : "";
}

export function OnOffReason({ mode, as, name }: OnOffProps) {
  const { always, either, on, other } = useOnOff(mode, as);
  const where = `${name} on in ${nameOf(mode)}`;
  if (always) return <p class="because">Nothing switches {name} off from outside the case, so it is on in every way.</p>;
  if (on) return <p class="because">It is on there now.</p>;
  if (either) return <p class="because">It may be on there: it does not matter.</p>;
  if (other === "workable") return <p class="because">As things stand now it can be on there.</p>;
  return <Because choice={choiceId({ kind: "on", mode: mode.id, card: as })} value="on" label={where} doing={`Switch ${where}`} />;
}
