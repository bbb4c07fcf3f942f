// CSV that is safe to open in a spreadsheet: quoted as RFC 4180 says, and no cell that a program could take for a formula.

/** A cell that begins like a formula gets an apostrophe before it, which spreadsheets take as "this is text". */
export function cell(value: unknown): string {
  const text = value === undefined || value === null ? "" : String(value);
  const number = typeof value === "number" && Number.isFinite(value);
  const safe = !number && /^[\s]*[=+\-@\t\r|%]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * A table with one line a row. What is wrong with the records behind it stands in a last column of its own, in every row: so it stays with a
 * row that is sorted, filtered or copied, and no other column moves. A table without rows gets one for it, since an empty one says most.
 */
export function csv(heads: readonly string[], rows: readonly (readonly unknown[])[], notice?: string): string {
  const told = rows.length === 0 ? [heads.map(() => "")] : rows;
  const table = notice === undefined ? [heads, ...rows] : [[...heads, "notice"], ...told.map((row) => [...row, notice])];
  return table.map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}
