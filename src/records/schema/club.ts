// The club whose records these are.
import type { Static } from "@sinclair/typebox";
import { head, list, optional, strict, text } from "./common.js";

export const Club = strict("The club that keeps these records.", {
  ...head,
  about: text("Who they are, in two sentences."),
  contact: optional(text("How to reach the record keeper.")),
  licence: text("Terms of the records."),
  keepers: optional(list(text("A name."), "Record keepers.")),
});
export type Club = Static<typeof Club>;
