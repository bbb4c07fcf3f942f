// Published records and tool output that images are checked against. Each group names where its values come from.

/**
 * Intel HEX records. Sources: an 8051 assembler manual's appendix; the maker's specification, revision A, 1988;
 * a board monitor's manual page; output of srec_cat 1.64 and GNU objcopy 2.40 (the last but one group);
 * the last is a widely published example, written down from memory.
 */
export const hexRecords = [
  { record: ":10E0000002E003E4F588758910F58DF58BD28E302A", source: "8051 assembler manual" },
  { record: ":00000001FF", source: "specification, revision A, 1988" },
  { record: ":04003000902BB4FD60", source: "board monitor manual" },
  { record: ":090000003132333435363738391A", source: "srec_cat and objcopy agree" },
  { record: ":020000040000FA", source: "srec_cat" },
  { record: ":0B0010006164647265737320676170A7", source: "from memory, widely published" },
] as const;

/** S-records. Sources: a public page on the format; a programmer maker's help page; output of srec_cat 1.64. */
export const sRecords = [
  { record: "S10D1000736F6D6520646174610074", source: "public S-record page", text: "some data\0" },
  {
    record: "S21D0100006461746120617420612068696768657220616464726573730034",
    source: "public S-record page",
    text: "data at a higher address\0",
  },
  { record: "S9030000FC", source: "public S-record page", text: "" },
  { record: "S00C000054455354312E4845586F", source: "programmer maker's help page", text: "TEST1.HEX" },
  { record: "S315CAFE010055AA55AA55AA55AA55AA55AA55AA55AA29", source: "programmer maker's help page" },
  { record: "S315CAFE0110000102030405060708090A0B0C0D0E0F99", source: "programmer maker's help page" },
  { record: "S10C000031323334353637383916", source: "srec_cat", text: "123456789" },
] as const;

export const badRecords = [
  { record: ":10E0000002E003E4F588758910F58DF58BD28E302B", format: "hex", right: "2A" },
  { record: "S10D1000736F6D6520646174610075", format: "srec", right: "74" },
] as const;

/** Check values published with the algorithms: CRC-32/ISO-HDLC of "123456789" and of nothing; SHA-256 of "abc" and of nothing (FIPS 180-4). */
export const checkValues = {
  crc32: { "123456789": "cbf43926", "": "00000000" },
  sha256: {
    abc: "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    "": "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
  },
} as const;

/** Inputs by recipe, and what srec_cat 1.64 made of them (split and swap agree with objcopy 2.40). */
export const inputs = {
  in1: { make: () => Uint8Array.from({ length: 256 }, (_, i) => 7 * i + 3), crc32: "78825239" },
  in2: { make: () => Uint8Array.from({ length: 4096 }, (_, i) => (i >> 8) ^ (i & 255)), crc32: "fbbdd0f4" },
  a: { make: () => stream(1, 8192), crc32: "fbdcf897" },
  b: { make: () => stream(2, 8192), crc32: "7a1bda40" },
  c: { make: () => stream(3, 8192), crc32: "5933bb43" },
} as const;

export const outputs = {
  even: { crc32: "9e2fb4ec", sha256: "02edb9470789a35fc7d81dfaf14a126df247b95f3cd540fb793ba6569ff91a86" },
  odd: { crc32: "0cb6a27d", sha256: "f7af4c3f19466fed9a3b3c22b60163aa666f0627f85d30e50d0d39e106cf2783" },
  swapped: { crc32: "d04ac38c", sha256: "978604f1b7f31ce4747165579a2dcd47d90edc4e68a5cb13a5a48c361d3b08fb" },
  padded: { crc32: "6b065f0c", even: "ad4f2cbf", odd: "8c08f1c4" },
  /** 32 KiB: bank 0 = a, bank 1 = b, bank 2 empty (FF), bank 3 = c. */
  device: { crc32: "d7affb61", sha256: "11131f3e9a8dc1e70b0f4831614d77051b2c1bb67900f57baecdb44c843e4fc2" },
} as const;

/** 32-bit xorshift (13, 17, 5); each state is appended as four bytes, low byte first. */
export function stream(seed: number, length: number): Uint8Array {
  const out = new Uint8Array(length);
  let x = seed >>> 0;
  for (let i = 0; i < length; i++) {
    if (i % 4 === 0) {
      x = (x ^ (x << 13)) >>> 0;
      x = (x ^ (x >>> 17)) >>> 0;
      x = (x ^ (x << 5)) >>> 0;
    }
    out[i] = (x >>> (8 * (i % 4))) & 255;
  }
  return out;
}
