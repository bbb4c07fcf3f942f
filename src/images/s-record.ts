// S-records: S0 header, S1/S2/S3 data with 16, 24 or 32 bits of address, S5/S6 count, S7/S8/S9 end.
import { itemAt, lastOf, must } from "../records/index.js";
import { fromHexDigits, Gatherer, type MemoryFile, sumOf, toHexDigits } from "./memory-file.js";

const addressBytes: Readonly<Record<string, number>> = { 0: 2, 1: 2, 2: 3, 3: 4, 5: 2, 6: 3, 7: 4, 8: 3, 9: 2 };

export type SRecord =
  | { readonly kind: "record"; readonly type: number; readonly address: number; readonly data: Uint8Array }
  | { readonly kind: "bad"; readonly says: string; readonly expected: string };

export function readSRecord(line: string): SRecord {
  const bad = (says: string, expected: string): SRecord => ({ kind: "bad", says, expected });
  if (!/^[Ss][0-9]/.test(line)) return bad("The line does not begin with S and a digit.", "a record S0 to S9");
  const wide = addressBytes[itemAt(line, 1)];
  if (wide === undefined) return bad(`Record type ${line.slice(0, 2).toUpperCase()} is not in use.`, "S0 to S3 or S5 to S9");
  const all = fromHexDigits(line.slice(2));
  if (all === undefined) return bad("The line holds something that is not a pair of hex digits.", "pairs of 0-9 and A-F after the type");
  const count = all[0];
  if (count === undefined || count < wide + 1)
    return bad(`The record counts ${count ?? 0} bytes.`, `at least ${wide + 1}: ${wide} of address and the check byte`);
  if (all.length !== count + 1) return bad(`The record says ${count} bytes and holds ${all.length - 1}.`, `${count} bytes after the count`);
  if (sumOf(all) !== 0xff) {
    const right = ~sumOf(all.subarray(0, -1)) & 0xff;
    return bad(`The check byte is ${toHexDigits([lastOf(all)])}.`, `${toHexDigits([right])} for the bytes as they stand`);
  }
  let address = 0;
  for (const b of all.subarray(1, 1 + wide)) address = address * 256 + b;
  return { kind: "record", type: Number(line[1]), address, data: all.subarray(1 + wide, -1) };
}

export function readSRecords(text: string): MemoryFile {
  const gather = new Gatherer();
  let header: string | undefined;
  let records = 0;
  let ended = 0;
  // Some writers leave the end record out and close with the count: that proves as well that nothing is missing.
  let counted = false;
  for (const [index, raw] of text.split(/\r\n|\n|\r/).entries()) {
    const line = raw.trim();
    const number = index + 1;
    if (line === "") continue;
    if (gather.problems.length >= 20) break;
    if (ended > 0) {
      gather.refuse(number, `There is more after the end record of line ${ended}.`, "nothing after the end record");
      break;
    }
    const record = readSRecord(line);
    if (record.kind === "bad") {
      gather.refuse(number, record.says, record.expected);
      continue;
    }
    const { type, address, data } = record;
    if (type === 0) header = String.fromCharCode(...data).replace(/[^\x20-\x7e]/g, "");
    else if (type <= 3) {
      records++;
      counted = false;
      gather.add(address, data, number);
    } else if (type <= 6) {
      counted = true;
      if (address !== records)
        gather.refuse(number, `The count record says ${address} data records; ${records} came before it.`, `${records}`);
    } else ended = number;
  }
  if (ended === 0 && !counted && gather.problems.length === 0)
    gather.refuse(0, "The file has no end record; it may be cut short.", "a last line S5 to S9: a count or an end");
  return gather.finish("srec", header);
}

function sRecord(type: number, address: number, data: readonly number[] | Uint8Array): string {
  const wide = must(addressBytes[type], `the length of addresses in records of type ${type}`);
  const where = Array.from({ length: wide }, (_, i) => Math.floor(address / 256 ** (wide - 1 - i)) & 0xff);
  const body = [wide + data.length + 1, ...where, ...data];
  return `S${type}${toHexDigits([...body, ~sumOf(body) & 0xff])}\n`;
}

/** The narrowest data record that reaches the last address; the header holds up to 20 characters of the title. */
export function writeSRecords(bytes: Uint8Array, base = 0, title = ""): string {
  const last = base + Math.max(0, bytes.length - 1);
  const type = last <= 0xffff ? 1 : last <= 0xffffff ? 2 : 3;
  const header = [...title.replace(/[^\x20-\x7e]/g, "").slice(0, 20)].map((c) => c.charCodeAt(0));
  const lines = [sRecord(0, 0, header)];
  for (let at = 0; at < bytes.length; at += 16) lines.push(sRecord(type, base + at, bytes.subarray(at, at + 16)));
  const records = lines.length - 1;
  if (records <= 0xffffff) lines.push(sRecord(records <= 0xffff ? 5 : 6, records, []));
  lines.push(sRecord(10 - type, 0, []));
  return lines.join("");
}
