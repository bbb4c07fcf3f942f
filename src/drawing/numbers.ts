// Numbers as drawings write them: a thin space before the unit, addresses in hex, sizes in K and M.

const thin = "\u2009";

export function withUnit(value: number, unit: string, decimals = 2): string {
  return `${Number(value.toFixed(decimals))}${thin}${unit}`;
}

export function address(value: number, digits: number): string {
  return `0x${value.toString(16).toUpperCase().padStart(digits, "0")}`;
}

export function sizeOf(count: number): string {
  if (count >= 2 ** 20 && count % 2 ** 20 === 0) return `${count / 2 ** 20}M`;
  if (count >= 1024 && count % 1024 === 0) return `${count / 1024}K`;
  return String(count);
}
