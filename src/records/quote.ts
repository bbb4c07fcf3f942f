// A text as it must be written in a record to be read as text: an id of digits only, or the word true, stands in quotes.
// By the core schema of YAML 1.2; the parser itself is too large to be carried into a browser for this.

/** What YAML reads as nothing, a truth value or a number. */
const otherwise = [
  /^(?:~|null|Null|NULL|true|True|TRUE|false|False|FALSE)$/,
  /^(?:0o[0-7]+|0x[0-9a-fA-F]+)$/,
  /^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$/,
  /^[-+]?\.(?:inf|Inf|INF)$/,
  /^\.(?:nan|NaN|NAN)$/,
];

/** Letters, digits and what names have between them; no mark that means something to YAML. */
const plain = /^[\p{L}\p{N}._/+](?:[\p{L}\p{N}._/+ -]*[\p{L}\p{N}._/+-])?$/u;

export function quoteText(text: string): string {
  return plain.test(text) && !otherwise.some((form) => form.test(text)) ? text : JSON.stringify(text);
}
