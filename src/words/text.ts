// Small pieces of sentences that every room writes alike: lists, counts, capitals.

/** "a, b and c" */
export function listText(items: readonly string[], last = "and"): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}

/** "one card", "12 cards": small numbers in words. */
export function countText(count: number, one: string, many = `${one}s`): string {
  const words = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
  return `${words[count] ?? count} ${count === 1 ? one : many}`;
}

/** "one thing", "two to four things": from the least of the counts to the most. */
export function rangeText(counts: readonly number[], one: string, many = `${one}s`): string {
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  return least === most ? countText(least, one, many) : `${countText(least, "", "").trim()} to ${countText(most, one, many)}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
