// Figures of a benchmark: processor time (not the clock's, so that a busy machine spoils less), medians and tails, tables and a plot.

export const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

export interface Spread {
  readonly runs: number;
  readonly median: number;
  readonly p95: number;
  readonly max: number;
}

export function spreadOf(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  return { runs: sorted.length, median: at(0.5), p95: at(0.95), max: sorted.at(-1) ?? 0 };
}

export const short = (ms: number): string => (ms >= 100 ? ms.toFixed(0) : ms >= 10 ? ms.toFixed(1) : ms.toFixed(2));
export const spelt = (s: Spread): string => (s.runs === 0 ? "none" : `${short(s.median)} / ${short(s.p95)} / ${short(s.max)}`);

/** A Markdown table with its columns set out evenly, as the formatter wants it. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((cell, c) => Math.max(3, cell.length, ...rows.map((row) => row[c]!.length)));
  const line = (cells: readonly string[]) => `| ${cells.map((cell, c) => cell.padEnd(widths[c]!)).join(" | ")} |`;
  return [line(head), line(widths.map((width) => "-".repeat(width))), ...rows.map(line)].join("\n");
}

/** Horizontal bars from median to maximum on a logarithmic scale of milliseconds, readable in one colour. */
export function plot(title: string, bars: readonly { readonly label: string; readonly spread: Spread }[]): string {
  const [left, width, row] = [300, 560, 22];
  const decades = [0.1, 1, 10, 100, 1000, 10_000];
  const x = (ms: number) => left + (Math.log10(Math.min(10_000, Math.max(0.1, ms)) / 0.1) / 5) * width;
  const height = 60 + bars.length * row;
  const lines = decades.map(
    (d) => `<path d="M${x(d)} 40V${height - 14}" stroke="#bbb"/><text x="${x(d)}" y="34" text-anchor="middle">${d} ms</text>`,
  );
  const marks = bars.map(({ label, spread }, i) => {
    const y = 56 + i * row;
    return `<text x="${left - 8}" y="${y + 4}" text-anchor="end">${label}</text><path d="M${x(spread.median)} ${y}H${x(spread.max)}" stroke="#222" stroke-width="2"/><circle cx="${x(spread.median)}" cy="${y}" r="5" fill="#222"/><path d="M${x(spread.max)} ${y - 6}v12" stroke="#222" stroke-width="2"/><path d="M${x(spread.p95)} ${y - 4}v8" stroke="#222"/>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${left + width + 40} ${height}" font-family="sans-serif" font-size="12" role="img"><title>${title}</title><rect width="100%" height="100%" fill="#fff"/><text x="8" y="18" font-weight="bold">${title}</text>${lines.join("")}${marks.join("")}</svg>\n`;
}
