// Files that slotwright burn takes for a version on the owner's word. Bytes that miss a recorded checksum want that word twice: once which
// version they are, and once that they may differ.
import { identify, type NamedBytes, takeWord } from "../../images/index.js";
import { UsageError } from "../usage-error.js";
import type { BurnRecipe } from "./burn-recipe.js";
import type { Club } from "./club.js";

export interface WordOptions {
  /** version=file */
  readonly as?: readonly string[];
  /** Versions whose bytes may differ from what is recorded. */
  readonly evenIfDifferent?: readonly string[];
}

export interface OnWord {
  /** Versions that nothing was checked of, with why not. */
  readonly unchecked: ReadonlyMap<string, string>;
  /** Those of them whose bytes miss the recorded checksum. */
  readonly different: readonly string[];
  readonly warnings: readonly string[];
  readonly refused: readonly string[];
}

/** Puts what is taken among the images. */
export async function takeOnWord(
  { as = [], evenIfDifferent = [] }: WordOptions,
  recipe: BurnRecipe,
  images: Map<string, Uint8Array>,
  club: Club,
  open: (file: string) => readonly NamedBytes[],
): Promise<OnWord> {
  const words = as.map((word) => split(word, recipe));
  for (const [i, { version, file }] of words.entries()) {
    const before = words.slice(0, i).find((word) => word.version === version);
    if (before)
      throw new UsageError(`--as names two files for ${version}: ${before.file} and ${file}.`, "Name the one that is to be burned.");
  }
  for (const version of evenIfDifferent)
    if (!words.some((word) => word.version === version))
      throw new UsageError(
        `--even-if-different ${version} speaks of no file.`,
        `Name the file as well: --as ${version}=<file> --even-if-different ${version}`,
      );
  const proved = new Set(images.keys());
  const unchecked = new Map<string, string>();
  const different: string[] = [];
  const warnings: string[] = [];
  const refused: string[] = [];
  for (const { version, file } of words)
    for (const { name, bytes } of open(file)) {
      const identified = await identify(bytes, club.catalogue.firmware.values(), name);
      const given = takeWord(identified, bytes, recipe.family, version);
      const not = whyNot(given, name, version, { evenIfDifferent, proved, family: recipe.family.name });
      if (not !== undefined) refused.push(not);
      if (not !== undefined || given.kind === "refused") continue;
      images.set(version, bytes);
      if (given.kind === "known") continue;
      unchecked.set(version, given.kind === "different" ? "not checked: not the recorded checksum" : "no checksum recorded: not checked");
      if (given.kind === "different") different.push(version);
      warnings.push(`${file} is taken for ${version} on your word. ${given.says}${given.kind === "different" ? " Not checked." : ""}`);
    }
  return { unchecked, different: [...new Set(different)], warnings, refused };
}

/** Why a file is not taken for a version; undefined where it is. */
function whyNot(
  given: ReturnType<typeof takeWord>,
  name: string,
  version: string,
  of: { readonly evenIfDifferent: readonly string[]; readonly proved: ReadonlySet<string>; readonly family: string },
): string | undefined {
  if (given.kind === "refused") return given.says;
  const notTaken = `${name} is not taken for ${of.family} ${version}.`;
  if (given.kind === "different" && of.proved.has(version))
    return `${notTaken} A file named with --dump has the recorded checksum of ${version}, and these bytes do not. Leave out the one that is not to be burned.`;
  if (given.kind === "different" && !of.evenIfDifferent.includes(version))
    return `${notTaken} ${given.says} If you know why they differ, say that too: --even-if-different ${version}`;
  return undefined;
}

function split(word: string, recipe: BurnRecipe): { readonly version: string; readonly file: string } {
  const at = word.indexOf("=");
  const [version, file] = [word.slice(0, at), word.slice(at + 1)];
  if (at < 1 || file === "") throw new UsageError(`--as ${word} cannot be read.`, "Write --as <version>=<file>.");
  if (!recipe.family.versions.some((v) => v.id === version))
    throw new UsageError(
      `${recipe.family.name} has no version ${version}.`,
      `It has: ${recipe.family.versions.map((v) => v.id).join(", ")}.`,
    );
  return { version, file };
}
