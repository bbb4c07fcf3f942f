// A text as it must be written in a record to be read as text: an id of digits only, or the word true, stands in quotes.
import { stringify } from "yaml";

export function quoteText(text: string): string {
  return stringify(text, { version: "1.2", lineWidth: 0, blockQuote: false }).trimEnd();
}
