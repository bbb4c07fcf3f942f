// A refusal: what was asked cannot be written there. Files has said nothing and changed nothing when it throws one.

/** Carries what to do next, for the person who asked. */
export class FileRefusal extends Error {
  readonly next: string;

  constructor(message: string, next: string) {
    super(message);
    this.name = "FileRefusal";
    this.next = next;
  }
}

export interface Explanation {
  readonly message: string;
  readonly next: string;
}

const again = "then run the same command again";

/** What the system's own refusals mean to a person; the rest are faults of the program. */
const meanings: Readonly<Record<string, readonly [means: string, next: string]>> = {
  ENOSPC: ["there is no room left on the disk", `Make room, ${again}.`],
  EDQUOT: ["the room you may use on this disk is used up", `Make room, ${again}.`],
  EACCES: ["the system does not allow it", `Get the right to read and write there, or name another place, ${again}.`],
  EPERM: ["the system does not allow it", `Get the right to read and write there, or name another place, ${again}.`],
  EROFS: ["the disk is read-only", "Name a place on a disk that can be written."],
  EBUSY: ["it is in use, or a disk is mounted there", "Name a folder inside it, or another place."],
  EXDEV: ["it lies on another disk than the folder around it", "Name a folder inside it, or another place."],
  ENOTDIR: ["a part of the path is a file, not a folder", "Name another place."],
  EISDIR: ["it is a folder", "Name a file."],
  ELOOP: ["it is a link that leads back to itself", "Mend the link, or name another place."],
  ENAMETOOLONG: ["the name is too long for this disk", "Name a place with a shorter path."],
  EIO: ["the disk does not answer as it should", "Look after the disk before you write to it again."],
  EMFILE: ["too many files are open", `Close some programs, ${again}.`],
  ENFILE: ["too many files are open", `Close some programs, ${again}.`],
};

/** The words for an error of the system's, or undefined when it is none that a person can mend. */
export function explainSystemError(problem: unknown): Explanation | undefined {
  if (!(problem instanceof Error && "code" in problem && typeof problem.code === "string" && "syscall" in problem)) return undefined;
  const meaning = meanings[problem.code];
  if (!meaning) return undefined;
  const path = "path" in problem && typeof problem.path === "string" ? problem.path : undefined;
  const [means, next] = meaning;
  return { message: `${path ?? "A file"} cannot be used: ${means} (${problem.code}).`, next };
}

/** Runs what leaves a place as it was when it fails, and says so when the system refuses. */
export function leaveAsItWas<T>(shown: string, write: () => T): T {
  try {
    return write();
  } catch (problem) {
    const explained = explainSystemError(problem);
    throw explained ? new FileRefusal(`${explained.message} ${shown} is as it was.`, explained.next) : problem;
  }
}

/** True for an error of the system's with one of these codes. */
export function hasCode(problem: unknown, ...codes: readonly string[]): boolean {
  return problem instanceof Error && "code" in problem && codes.includes(String(problem.code));
}

/** What disks without second names for one file answer when they are asked for one. */
export const noLinks = ["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK"] as const;
