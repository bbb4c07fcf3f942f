// Reads which files a source file imports, and judges them by the import column: which room may enter which.
import { posix } from "node:path";

export interface Import {
  /** As written: "../records/index.js", "node:fs", "yaml". */
  readonly from: string;
  /** Only types cross; nothing of it is left when the program runs. */
  readonly typeOnly: boolean;
  readonly line: number;
}

/** Comments and template text hold no imports; their lines are kept so that line numbers stay true. */
function withoutComments(source: string): string {
  const blank = (text: string) => text.replace(/[^\n]/g, " ");
  return source
    .replace(/\/\*[\s\S]*?\*\//g, blank)
    .replace(/(^|[\s;{}(),])\/\/[^\n]*/g, (all, lead: string) => lead + blank(all.slice(lead.length)));
}

const statement = /(?:^|\n|;)[ \t]*(import|export)\b(\s+type\b)?([^;"'`]*?\bfrom)?\s*["']([^"'\n]+)["']/g;
const call = /\b(?:import|require)\s*\(\s*["']([^"'\n]+)["']/g;
const address = /\bnew\s+URL\s*\(\s*["'](\.[^"'\n]+)["']\s*,\s*import\.meta\.url/g;

export function importsOf(source: string): readonly Import[] {
  const text = withoutComments(source);
  const lineAt = (offset: number) => text.slice(0, offset).split("\n").length;
  const found: Import[] = [];
  for (const m of text.matchAll(statement)) {
    if (m[1] === "export" && !m[3]) continue;
    const named = m[3] === undefined ? undefined : /\{([\s\S]*)\}/.exec(m[3])?.[1];
    const allTypes =
      named !== undefined &&
      !/^\s*[\w$]+\s*,/.test(m[3] ?? "") &&
      named.split(",").every((name) => name.trim() === "" || name.trim().startsWith("type "));
    found.push({ from: m[4] as string, typeOnly: m[2] !== undefined || allTypes, line: lineAt((m.index ?? 0) + m[0].length) });
  }
  for (const pattern of [call, address]) {
    for (const m of text.matchAll(pattern)) found.push({ from: m[1] as string, typeOnly: false, line: lineAt(m.index ?? 0) });
  }
  return found.sort((a, b) => a.line - b.line);
}

/** What a room may enter: "all" its exports, or "types" only. A room may always use its own files. */
export type Column = Readonly<Record<string, Readonly<Record<string, "all" | "types">>>>;

export interface RoomRules {
  readonly column: Column;
  /** Packages from outside that a room may use; "node:*" stands for Node's own modules, the process and the console. */
  readonly packages: Readonly<Record<string, readonly string[]>>;
}

/** The table of rooms in DEVELOPERS.md: `| \`src/room/\` | holds | imports | packages | never |`. */
export function roomTable(text: string): RoomRules {
  const rows = [...text.matchAll(/^\| `(?:src\/)?([a-z]+)\/` \|[^|]*\|([^|]*)\|([^|]*)\|[^|]*\|$/gm)];
  const names = (cell: string) => cell.split(",").flatMap((name) => name.trim() || []);
  const way = (name: string) => [name.replace(" (types)", ""), name.endsWith(" (types)") ? ("types" as const) : ("all" as const)];
  return {
    column: Object.fromEntries(rows.map(([, room, imports]) => [room, Object.fromEntries(names(imports ?? "").map(way))])),
    packages: Object.fromEntries(rows.map(([, room, , packages]) => [room, names(packages ?? "")])),
  };
}

/** Circles of imports between files, types left out: each as "a -> b -> a". */
export function circlesAmong(files: readonly string[], read: (file: string) => string): readonly string[] {
  const known = new Set(files);
  const targets = (file: string) =>
    importsOf(read(file)).flatMap(({ from, typeOnly }) => {
      if (typeOnly || !from.startsWith(".")) return [];
      const base = posix.join(posix.dirname(file), from).replace(/\.jsx?$/, "");
      return [`${base}.ts`, `${base}.tsx`].filter((name) => known.has(name));
    });
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (file: string, path: readonly string[]) => {
    const at = path.indexOf(file);
    if (at >= 0) circles.push([...path.slice(at), file].join(" -> "));
    if (at >= 0 || done.has(file)) return;
    for (const next of targets(file)) walk(next, [...path, file]);
    done.add(file);
  };
  for (const file of files) walk(file, []);
  return circles;
}

/** The room a file belongs to: the folder below src/, or "templates". */
export function roomOf(file: string): string | undefined {
  const parts = file.split("/");
  if (parts[0] === "templates") return "templates";
  return parts[0] === "src" && parts.length > 2 ? parts[1] : undefined;
}

/** Every breach of the rules in one file, as sentences that begin with file:line. */
export function breaches(file: string, source: string, rules: RoomRules): readonly string[] {
  const room = roomOf(file);
  if (room === undefined) return [];
  const may = rules.column[room];
  if (may === undefined) return [`${file}:1 lies in a room nobody declared: ${room}`];
  const says: string[] = [];
  for (const { from, typeOnly, line } of importsOf(source)) {
    const at = `${file}:${line}`;
    if (!from.startsWith(".")) {
      const allowed = rules.packages[room] ?? [];
      const fits = (name: string) => (name === "node:*" ? from.startsWith("node:") : from === name || from.startsWith(`${name}/`));
      if (!typeOnly && !allowed.some(fits)) says.push(`${at} ${room} may not use ${from}`);
      continue;
    }
    const target = posix.join(posix.dirname(file), from);
    const into = roomOf(target);
    if (into === room) continue;
    if (into === undefined) {
      says.push(`${at} ${room} reaches outside the rooms: ${from}`);
      continue;
    }
    const way = may[into];
    if (way === undefined) says.push(`${at} ${room} may not enter ${into}`);
    else if (way === "types" && !typeOnly) says.push(`${at} ${room} may take only types from ${into}`);
    const door = target.replace(/\.jsx?$/, "");
    if (door !== `src/${into}/index` && into !== "templates") says.push(`${at} ${into} is entered through its index, not ${from}`);
  }
  return says;
}

/** Uses of the process, the console or Node's globals, as file:line sentences. */
export function nodeUses(file: string, source: string, rules: RoomRules): readonly string[] {
  const room = roomOf(file);
  if (room === undefined || rules.packages[room]?.includes("node:*")) return [];
  const text = withoutComments(source).replace(
    /"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*'/g,
    (s) => `"${" ".repeat(Math.max(0, s.length - 2))}"`,
  );
  const says: string[] = [];
  for (const [i, lineText] of text.split("\n").entries()) {
    const used = /(?<![.\w$-])(process|console|Buffer|__dirname|__filename|setImmediate)\s*[.([]/.exec(lineText);
    if (used) says.push(`${file}:${i + 1} ${room} may not use ${used[1]}`);
  }
  return says;
}
