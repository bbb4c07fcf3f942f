// Two questions about a machine as it is: would this card work in it, and which cards of the catalogue would. Asks, and prints.

import type { InvalidBuild } from "../../machine/index.js";
import { beforeYouBuy, type Fitting, type Purchase, reasonsSentence, repairsSentence, whatWouldFit } from "../../planning/index.js";
import { noticeText, verdictWords } from "../../words/index.js";
import { json } from "../command.js";
import { para, styled, type Terminal } from "../printing/terminal.js";
import type { AskedBuild } from "../reading/build-question.js";
import type { Club } from "../reading/club.js";
import { counted } from "../reading/club.js";
import { misasked } from "../reading/planner.js";
import { type ExitCode, UsageError } from "../usage-error.js";

export function tellBuying(club: Club, asked: AskedBuild, card: string, asJson: boolean, terminal: Terminal): ExitCode {
  terminal.progress("planning");
  const answer: Purchase | InvalidBuild = beforeYouBuy(club.catalogue, asked.build, card);
  terminal.progress("");
  if (answer.kind === "misasked") throw misasked(answer, asked);
  if (asJson) terminal.out(json({ ...answer, errors: club.catalogue.errors }));
  else for (const line of buyingLines(club, answer, (text) => styled(terminal, "bold", text))) terminal.out(line);
  return answer.verdict === "workable" || answer.verdict === "conditional" ? 0 : 1;
}

function* buyingLines(club: Club, answer: Purchase, title: (text: string) => string): Generator<string> {
  const name = club.catalogue.cards.get(answer.card)?.name ?? answer.card;
  const list = function* (head: string, items: readonly string[]) {
    if (items.length === 0) return;
    yield "";
    yield title(head);
    for (const item of items) yield para("", `- ${item}`);
  };
  yield* noticeLines(club);
  yield title(`${name}: ${answer.says}`);
  yield `Verdict: ${verdictWords[answer.verdict].word} (${answer.verdict})`;
  yield* list(
    "Firmware by firmware",
    answer.versions.map((v) => `${v.version}: ${v.says}`),
  );
  yield* list("What must change", answer.changes);
  yield* list(
    "What you would have to get",
    answer.shopping.map((w) => `${w.what} (${w.why})`),
  );
  yield* list("What remains at risk", answer.risks);
  yield* list(
    "Why not",
    answer.reasons.map((r) => r.says),
  );
  if (answer.reasons.length === 0) return;
  yield para("", reasonsSentence(answer));
  yield* list(
    "What would help",
    answer.repairs.map((r) => r.says),
  );
  yield para("", repairsSentence(answer));
}

function* noticeLines(club: Club): Generator<string> {
  const notice = noticeText(club.catalogue);
  if (notice !== undefined) yield `${para("", notice)}\n`;
}

export function tellFitting(club: Club, asked: AskedBuild, most: string | true, asJson: boolean, terminal: Terminal): ExitCode {
  const changes = most === true ? 2 : Number(most);
  if (!Number.isInteger(changes) || changes < 0)
    throw new UsageError(`--fits ${most} is not a number of changes.`, "Say how many changes at most: --fits 0, --fits 1, --fits 2.");
  terminal.progress(`trying ${counted(club.catalogue.cards.size, "card")}`);
  const fits = whatWouldFit(club.catalogue, asked.build, changes);
  terminal.progress("");
  if ("kind" in fits) throw misasked(fits, asked);
  if (asJson)
    terminal.out(json({ kind: "fitting", most: changes, cards: fits, unread: club.catalogue.unread, errors: club.catalogue.errors }));
  else for (const line of fittingLines(club, fits, changes, (text) => styled(terminal, "bold", text))) terminal.out(line);
  return fits.some((f) => f.verdict !== "unknown") ? 0 : 1;
}

function* fittingLines(club: Club, fits: readonly Fitting[], most: number, title: (text: string) => string): Generator<string> {
  yield* noticeLines(club);
  for (let changes = 0; changes <= most; changes++) {
    const those = fits.filter((f) => f.changes === changes);
    yield title(`${changes === 0 ? "Without changing anything" : `With ${counted(changes, "change")}`}: ${counted(those.length, "card")}`);
    for (const f of those) {
      const name = club.catalogue.cards.get(f.card)?.name ?? f.card;
      const how = f.says.length > 0 ? `: ${f.says.join("; ")}` : "";
      yield para("", `- ${name} (${f.card}): ${verdictWords[f.verdict].word}${how}`);
    }
  }
}
