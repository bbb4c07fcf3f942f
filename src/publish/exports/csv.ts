// CSV that is safe to open in a spreadsheet: quoted as RFC 4180 says, and no cell that a program could take for a formula.

/** A cell that begins like a formula gets an apostrophe before it, which spreadsheets take as "this is text". */
export function cell(value: unknown): string {
  const text = value === undefined || value === null ? "" : String(value);
  const number = typeof value === "number" && Number.isFinite(value);
  const safe = !number && /^[\s]*[=+\-@\t\r|%]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function csv(heads: readonly string[], rows: readonly (readonly unknown[])[]): string {
  return [heads, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}
