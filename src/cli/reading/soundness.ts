// Records with errors stop what would answer or publish from them, unless the person says to go on even so.
import { styled, type Terminal } from "../printing/terminal.js";
import { type Club, counted, findingText } from "./club.js";

/** Most errors that are shown before the command stops; `check` tells all. */
const shownErrors = 5;

export interface EvenSo {
  readonly evenSo?: boolean;
}

export const evenSoOption = ["--even-so", "go on although records have errors; what they could bear on is answered as not known"] as const;

/** True when nothing is wrong with the records, or the person goes on even so; what is wrong is told either way. */
export function isSound(club: Club, { evenSo }: EvenSo, terminal: Terminal): boolean {
  const errors = club.findings.filter((finding) => finding.level === "error");
  if (errors.length === 0) return true;
  for (const finding of errors.slice(0, shownErrors)) terminal.err(findingText(finding, terminal));
  if (errors.length > shownErrors)
    terminal.err(`and ${counted(errors.length - shownErrors, "more error", "more errors")}: slotwright check`);
  const all = `The records have ${counted(errors.length, "error")}.`;
  if (evenSo) terminal.err(styled(terminal, "warm", `${all} Going on even so: what they could bear on is not known.`));
  else terminal.err(`${all} Mend them (slotwright check tells each), or say --even-so to go on without what cannot be read.`);
  return evenSo === true;
}
