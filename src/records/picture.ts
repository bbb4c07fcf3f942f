// What a photo field says: a file of the club, an address, or only words, and whose it is.
import { itemAt } from "./must.js";
export interface Picture {
  /** Below the data folder. */
  readonly file?: string;
  readonly address?: string;
  /** Whose it is, or where it can be seen. */
  readonly says: string;
}

const named = /^(\S+\.(?:jpe?g|png|webp|gif|svg))(?:,\s*(.*))?$/is;
const linked = /^(https?:\/\/[^\s,]+)(?:,\s*(.*))?$/is;

export function pictureOf(photo: string): Picture {
  const address = linked.exec(photo);
  if (address) return { address: itemAt(address, 1), says: address[2] ?? "" };
  const file = named.exec(photo);
  return file ? { file: itemAt(file, 1), says: file[2] ?? "" } : { says: photo };
}
