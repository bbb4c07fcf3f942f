// What the owner chose and could give up: cards wanted, modes wanted, and everything pinned. All else is fact.

import { type ChoiceRef, choiceId } from "../machine/index.js";
import { bytes, itemAt, must, sizeText } from "../records/index.js";
import type { Choice, Constraint, Literal } from "../solver/index.js";
import { listText } from "../words/index.js";
import type { OwnersChoice } from "./facts.js";
import {
  cardIn,
  eachCard,
  eachMode,
  type Frame,
  inSlot,
  modeKept,
  ofRevision,
  onRevisions,
  runsVersion,
  setTo,
  withMemory,
} from "./frame.js";

/** Whether a card is on in a mode is no pin of its own: the mode is. */
type OwnersRef = Exclude<ChoiceRef, { kind: "on" }>;

/** Its kind, and the mode or the copy it belongs to. */
function aboutOf(ref: OwnersRef): Pick<OwnersChoice, "kind" | "card" | "mode"> {
  if ("card" in ref) return { kind: ref.kind, card: ref.card };
  return "mode" in ref ? { kind: ref.kind, mode: ref.mode } : { kind: ref.kind };
}

type Told = Choice & { readonly told: OwnersChoice };

/** In the order of the build: machine first, then modes, then cards. */
export function ownersChoices(frame: Frame): Told[] {
  const { question } = frame;
  const out: Told[] = [];
  const add = (ref: OwnersRef, says: string, literal: Literal | undefined, unless?: Literal) => {
    if (!literal) return;
    const id = choiceId(ref);
    const rules: Constraint[] = unless ? [{ kind: "clause", literals: [unless, literal] }] : [{ kind: "unary", ...literal }];
    out.push({ id, rules, told: { id, ...aboutOf(ref), says } });
  };
  const { build, board } = question;
  if (question.chosenRevisions.length < question.revisions.length)
    add(
      { kind: "revision" },
      `${board.name} is revision ${listText(question.chosenRevisions, "or")}`,
      onRevisions(frame, (r) => question.chosenRevisions.includes(r)),
    );
  if (build.memory !== undefined && question.memories.length > 1)
    add(
      { kind: "memory" },
      `${sizeText(bytes(build.memory))} of memory`,
      withMemory(frame, (m) => m === bytes(must(build.memory, "build.memory"))),
    );
  for (const { at, mode } of eachMode(frame)) {
    // A machine with one way to run cannot give that one up, so it is no choice.
    if (question.modes.length > 1) add({ kind: "mode", mode: mode.id }, `mode "${mode.name}"`, modeKept(frame, at));
    if (mode.firmware !== undefined) {
      const off = question.versions.length;
      const pinned = runsVersion(frame, at, (v) => v === mode.firmware);
      add(
        { kind: "firmware", mode: mode.id },
        `${question.family.name} ${mode.firmware}${question.modes.length > 1 ? ` in mode "${mode.name}"` : ""}`,
        { ...pinned, values: [...pinned.values, off] },
      );
    }
  }
  for (const { at, asked } of eachCard(frame)) {
    const { chosen, card, as } = asked;
    const out = frame.question.slots.length;
    // A card that is left out takes its pins with it: giving up the card is then one thing, not several.
    const gone: Literal = { variable: itemAt(frame.cards, at).slot, values: [out] };
    add({ kind: "card", card: as }, card.name, cardIn(frame, at));
    if (chosen.slot !== undefined) {
      const pinned = inSlot(frame, at, (s) => s.id === chosen.slot);
      add({ kind: "slot", card: as }, `${card.name} in ${chosen.slot}`, { ...pinned, values: [...pinned.values, out] });
    }
    if (chosen.revision !== undefined && asked.revisions.length > 1)
      add(
        { kind: "card-revision", card: as },
        `${card.name} of revision ${chosen.revision}`,
        ofRevision(frame, at, (r) => r === chosen.revision),
        gone,
      );
    for (const [id, position] of Object.entries(chosen.settings ?? {}))
      add({ kind: "setting", card: as, setting: id }, `${card.name} with ${id} at ${position}`, setTo(frame, at, id, [position]), gone);
  }
  return out;
}
