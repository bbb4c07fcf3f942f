// Writes the build sheet of an answered build as one self-contained page, or the card for the lid, and says why when there is neither.

import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { checkFile, writeFile } from "../../files/index.js";
import { lidSheetOf, sheetOf, waysOutCosts } from "../../pages/index.js";
import type { Answer } from "../../planning/index.js";
import { benchFiles, lidFile, sheetFile } from "../../publish/index.js";
import { noticeText } from "../../words/index.js";
import type { AskedBuild } from "../reading/build-question.js";
import type { Club } from "../reading/club.js";
import { packageTop, shown } from "../reading/folders.js";
import type { BuiltMachine } from "../reading/wiring-for.js";
import { UsageError } from "../usage-error.js";
import type { Terminal } from "./terminal.js";

/** The site's bundled style with its type faces in it, or the parts it is made of where nothing has been built, then without faces. */
function styleText(): string {
  const assets = join(packageTop(), "dist", "templates", "assets");
  const bundled = join(assets, "site.css");
  const parts = ["tokens", "base", "frame", "pieces", "sheet", "print"].map((name) =>
    join(packageTop(), "templates", "style", `${name}.css`),
  );
  return (existsSync(bundled) ? [bundled] : parts)
    .map((file) => readFileSync(file, "utf8"))
    .join("\n")
    .replace(/url\(["']?(fonts\/[\w-]+\.woff2)["']?\)/g, (whole, name: string) => {
      const face = join(assets, name);
      return existsSync(face) ? `url(data:font/woff2;base64,${readFileSync(face).toString("base64")})` : whole;
    })
    .replace(/@font-face\s*\{[^}]*url\(["']?fonts[^}]*\}/g, "");
}

/** Writes the sheet, or the card for the lid alone where no switch is built and the hand can do it. Returns what is to be said of it. */
export function writeSheet(club: Club, asked: AskedBuild, answer: Answer, file: string, replace: boolean, terminal: Terminal): string {
  const path = resolve(terminal.folder, file);
  const place = shown(path, terminal.folder);
  const notice = noticeText(club.catalogue);
  const result = answer.combinations.length > 0 ? sheetOf(club.catalogue, asked.build) : undefined;
  if (result?.kind === "sheet") {
    writeFile(path, sheetFile({ ...result.page, notice }, styleText()), replace, place);
    return `Wrote ${place}.`;
  }
  const why = result ? `No switch is built: ${result.why.says}` : `It cannot run as asked: ${answer.says}`;
  const lid = lidSheetOf(club.catalogue, asked.build, why, waysOutCosts(club.catalogue, answer));
  if (lid) {
    writeFile(path, lidFile({ ...lid, notice }, styleText()), replace, place);
    return `Wrote ${place}: the card for the lid alone. ${why}`;
  }
  if (!result) throw new UsageError(`There is nothing to build: ${answer.says}`, "Ask without --sheet to see why, and what would help.");
  throw new UsageError(
    `There is no build sheet: ${result.why.says}`,
    result.why.waysOut[0] ?? "A sheet is made for a machine that is switched between modes.",
    result.why.reasons,
  );
}

/** Writes the tables of the build sheet as files beside one another. Returns what is to be said of them. */
export function writeFiles(
  club: Club,
  asked: AskedBuild,
  built: BuiltMachine | undefined,
  folder: string,
  replace: boolean,
  terminal: Terminal,
): string {
  const wiring = built?.kind === "built" ? built.best.wiring : undefined;
  if (wiring?.kind !== "wiring")
    throw new UsageError(
      `There are no files for the bench: ${built?.kind === "refused" ? built.why.says : (wiring?.says ?? "no switch is wanted.")}`,
      "They are made for a machine that is switched between modes.",
    );
  const files = benchFiles(wiring.plan, asked.build.name, noticeText(club.catalogue)).map(({ name, content }) => {
    const path = resolve(terminal.folder, folder, name);
    return { path, place: shown(path, terminal.folder), content };
  });
  // All or none: nothing is written where one of them is there already.
  for (const { path, place } of files) checkFile(path, replace, place);
  for (const { path, place, content } of files) writeFile(path, content, replace, place);
  return `Wrote ${files.map((f) => f.place).join(", ")}.`;
}
