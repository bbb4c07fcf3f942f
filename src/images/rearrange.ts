// The ways one image can lie in files: bytes or words exchanged, split over two devices, repeated. All are pure and undo themselves.
import { itemAt } from "../records/index.js";

/** Exchanges the two bytes of every 16-bit word; a last odd byte stays. */
export function swapBytes(bytes: Uint8Array): Uint8Array {
  const out = bytes.slice();
  for (let i = 0; i + 1 < out.length; i += 2) {
    out[i] = itemAt(bytes, i + 1);
    out[i + 1] = itemAt(bytes, i);
  }
  return out;
}

/** Exchanges the two 16-bit words of every 32 bits; a rest shorter than four bytes stays. */
export function swapWords(bytes: Uint8Array): Uint8Array {
  const out = bytes.slice();
  for (let i = 0; i + 3 < out.length; i += 4) {
    out.set(bytes.subarray(i + 2, i + 4), i);
    out.set(bytes.subarray(i, i + 2), i + 2);
  }
  return out;
}

/** Every second byte, or every second word of `unit` bytes: lane "even" holds the first of each two. */
export function takeLane(bytes: Uint8Array, lane: "even" | "odd", unit = 1): Uint8Array {
  const out = new Uint8Array(bytes.length);
  let length = 0;
  for (let at = lane === "even" ? 0 : unit; at < bytes.length; at += 2 * unit) {
    const part = bytes.subarray(at, at + unit);
    out.set(part, length);
    length += part.length;
  }
  return out.slice(0, length);
}

/** Two lanes of equal length back into one image, by turns of `unit` bytes. */
export function joinLanes(even: Uint8Array, odd: Uint8Array, unit = 1): Uint8Array {
  const out = new Uint8Array(even.length + odd.length);
  const pairs = Math.min(even.length, odd.length);
  for (let at = 0; at < pairs; at += unit) {
    out.set(even.subarray(at, Math.min(at + unit, pairs)), 2 * at);
    out.set(odd.subarray(at, Math.min(at + unit, pairs)), 2 * at + unit);
  }
  return out;
}

export function repeatTo(bytes: Uint8Array, length: number): Uint8Array {
  const out = new Uint8Array(length);
  for (let at = 0; at < length; at += bytes.length) out.set(bytes.subarray(0, Math.min(bytes.length, length - at)), at);
  return out;
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** How often the shortest run that repeats to the whole fits in it; 1 when it does not repeat. Only whole divisions of the length count. */
export function timesHeld(bytes: Uint8Array): number {
  for (let times = Math.min(64, bytes.length); times > 1; times--) {
    if (bytes.length % times !== 0) continue;
    const period = bytes.length / times;
    let same = true;
    for (let i = period; i < bytes.length && same; i++) same = bytes[i] === bytes[i - period];
    if (same) return times;
  }
  return 1;
}
