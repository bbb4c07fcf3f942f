// A holder: the run that holds a lock, told well enough to find out later whether it still runs.
import { randomBytes } from "node:crypto";
import { readFileSync } from "node:fs";
import { hostname } from "node:os";

export interface Holder {
  /** What the run does: "slotwright site". */
  readonly what: string;
  readonly pid: number;
  readonly host: string;
  /** When the process began, as the system counts it: a number may be given to another process later. */
  readonly began?: string | undefined;
  /** Which start of the machine it runs under. */
  readonly boot?: string | undefined;
  readonly since: string;
  readonly nonce: string;
}

export function describeSelf(what: string): Holder {
  return {
    what,
    pid: process.pid,
    host: hostname(),
    began: processBegan(process.pid),
    boot: readIfThere("/proc/sys/kernel/random/boot_id")?.trim(),
    since: new Date().toISOString(),
    nonce: randomBytes(8).toString("hex"),
  };
}

export function parseHolder(text: string): Holder | undefined {
  try {
    const { what, pid, host, began, boot, since, nonce } = JSON.parse(text) as Partial<Record<keyof Holder, unknown>>;
    if (typeof what !== "string" || typeof host !== "string" || typeof since !== "string") return undefined;
    if (typeof pid !== "number" || typeof nonce !== "string" || !/^[0-9a-f]{16}$/.test(nonce)) return undefined;
    const textOr = (value: unknown) => (typeof value === "string" ? value : undefined);
    return { what, pid, host, began: textOr(began), boot: textOr(boot), since, nonce };
  } catch {
    return undefined;
  }
}

/** True only when it is certain that the run has ended; a run on another machine cannot be looked at. */
export function hasEnded(holder: Holder): boolean {
  if (holder.host !== hostname()) return false;
  const boot = readIfThere("/proc/sys/kernel/random/boot_id")?.trim();
  if (holder.boot !== undefined && boot !== undefined && holder.boot !== boot) return true;
  try {
    process.kill(holder.pid, 0);
  } catch (problem) {
    return problem instanceof Error && "code" in problem && problem.code === "ESRCH";
  }
  const began = processBegan(holder.pid);
  return holder.began !== undefined && began !== undefined && began !== holder.began;
}

/** Field 22 of the process's line, counted after its name, which may hold anything in brackets; Linux only. */
function processBegan(pid: number): string | undefined {
  const line = readIfThere(`/proc/${pid}/stat`);
  const fields = line?.slice(line.lastIndexOf(")") + 2).split(" ");
  // A process that ended and was not yet fetched by its parent is gone for us.
  return fields?.[0] === "Z" ? "ended" : fields?.[19];
}

function readIfThere(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}
