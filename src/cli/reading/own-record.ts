// What every command that writes a record asks first: is the id one, and is the folder the club's own.

import { UsageError } from "../usage-error.js";
import type { DataFolder } from "./folders.js";

/** Records are not written into the demo club of an installed package: an update would take them away. */
export function clubsOwn(data: DataFolder): DataFolder {
  if (!data.demo || data.shown === "data") return data;
  throw new UsageError(
    "No club's folder was named, and there is no data folder here.",
    "Name it with --data <folder>, or make one: slotwright start-club <folder>.",
  );
}

export function checkId(id: string): void {
  if (/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) return;
  const better = id
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  throw new UsageError(`"${id}" cannot be an id.`, `Ids are lower-case words and digits joined by hyphens${better ? `: ${better}` : "."}`);
}
