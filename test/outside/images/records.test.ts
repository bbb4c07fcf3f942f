// Intel HEX and S-records against published records; CRC-32 and SHA-256 against their published check values.
import { describe, expect, it } from "vitest";
import { checksums, crc32, readHexRecord, readIntelHex, readSRecord, readSRecords } from "../../../src/images/index.js";
import { badRecords, checkValues, hexRecords, sRecords } from "./published.js";

const bytesOf = (text: string) => Uint8Array.from(text, (c) => c.charCodeAt(0));

describe("published records", () => {
  it.each(hexRecords)("$record ($source) is read", ({ record }) => {
    expect(readHexRecord(record).kind).toBe("record");
  });

  it.each(sRecords)("$record ($source) is read", (published) => {
    const record = readSRecord(published.record);
    expect(record.kind).toBe("record");
    if (record.kind === "record" && "text" in published) expect(String.fromCharCode(...record.data)).toBe(published.text);
  });

  it.each(badRecords)("$record is refused, naming the right check byte", ({ record, format, right }) => {
    const read = format === "hex" ? readHexRecord(record) : readSRecord(record);
    expect(read).toMatchObject({ kind: "bad", expected: `${right} for the bytes as they stand` });
  });

  it("of Intel HEX are refused with any one bit turned", () => {
    for (const { record } of hexRecords) {
      for (let at = 1; at < record.length; at++)
        for (const bit of [1, 2, 4, 8]) {
          const digit = (Number.parseInt(record[at]!, 16) ^ bit).toString(16).toUpperCase();
          expect(readHexRecord(record.slice(0, at) + digit + record.slice(at + 1)).kind).toBe("bad");
        }
    }
  });

  it("give the address they say", () => {
    expect(readSRecord(sRecords[4].record)).toMatchObject({ type: 3, address: 0xcafe0100 });
    expect(readSRecord(sRecords[1].record)).toMatchObject({ type: 2, address: 0x010000 });
    expect(readHexRecord(hexRecords[0].record)).toMatchObject({ type: 0, offset: 0xe000 });
  });

  it("make files: the header, two lines of data, an end", () => {
    const file = readSRecords([sRecords[3].record, sRecords[4].record, sRecords[5].record, "S70500000000FA"].join("\r\n"));
    expect(file).toMatchObject({ kind: "read", base: 0xcafe0100, header: "TEST1.HEX", gaps: [] });
    if (file.kind === "read") expect([...file.bytes.slice(14, 20)]).toEqual([0x55, 0xaa, 0, 1, 2, 3]);
    const hex = readIntelHex(`${hexRecords[4].record}\n${hexRecords[3].record}\n${hexRecords[1].record}\n`);
    expect(hex).toMatchObject({ kind: "read", base: 0, bytes: bytesOf("123456789") });
  });
});

describe("published check values", () => {
  it.each(Object.entries(checkValues.crc32))("CRC-32 of %j", (text, crc) => {
    expect(crc32(bytesOf(text))).toBe(crc);
  });

  it.each(Object.entries(checkValues.sha256))("SHA-256 of %j", async (text, sha) => {
    expect((await checksums(bytesOf(text))).sha256).toBe(sha);
  });
});
