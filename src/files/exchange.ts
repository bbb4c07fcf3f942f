// Exchanges two folders in one step where the system can: at no moment does nothing stand at either place.
// Node has no call for it; small programs that most Linux systems have do, and are held to what they promise.
import { spawnSync } from "node:child_process";
import { lstatSync } from "node:fs";

/** Number of renameat2(2) by processor; the call that exchanges. */
const renameat2: Readonly<Record<string, number>> = { x64: 316, arm64: 276, riscv64: 276, arm: 382, ia32: 353, s390x: 347, ppc64: 357 };

/** -100 means "as the path says", 2 means exchange. */
const perl = "exit(syscall($ARGV[0] + 0, -100, $ARGV[1], -100, $ARGV[2], 2) == 0 ? 0 : 1)";

function waysFor(a: string, b: string): readonly (readonly [program: string, args: readonly string[]])[] {
  const number = renameat2[process.arch];
  return [
    ["mv", ["--exchange", "--no-target-directory", a, b]],
    ["exch", [a, b]],
    ...(number === undefined ? [] : [["perl", ["-e", perl, String(number), a, b]] as const]),
  ];
}

/** True when the two have changed places; false when this system has no way, and nothing has happened. Both paths are absolute. */
export function exchange(a: string, b: string): boolean {
  if (process.platform !== "linux") return false;
  const [oldA, oldB] = [identityOf(a), identityOf(b)];
  for (const [program, args] of waysFor(a, b)) {
    spawnSync(program, args, { stdio: "ignore" });
    const [newA, newB] = [identityOf(a), identityOf(b)];
    if (newA === oldB && newB === oldA) return true;
    if (newA !== oldA || newB !== oldB) throw new Error(`${program} was to exchange ${a} and ${b}, and did something else.`);
  }
  return false;
}

/** What stays the same when a file or folder is renamed; undefined where nothing stands. */
export function identityOf(path: string): string | undefined {
  const info = lstatSync(path, { bigint: true, throwIfNoEntry: false });
  return info && `${info.dev}:${info.ino}`;
}
