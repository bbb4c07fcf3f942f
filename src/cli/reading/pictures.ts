// Pictures that records name: whether each file is there, and the files for the site. They lie in the folder photos of the club's data.
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { findingOf } from "../../catalogue/index.js";
import { type Finding, pictureOf } from "../../records/index.js";
import { type Club, fromHere } from "./club.js";

const folder = "photos";

export interface PictureFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

function inFolder(file: string): boolean {
  return file.startsWith(`${folder}/`) && !file.includes("\\") && !file.split("/").includes("..");
}

function isThere(club: Club, file: string): boolean {
  return inFolder(file) && statSync(join(club.data.path, file), { throwIfNoEntry: false })?.isFile() === true;
}

/** A record that names a file which is not there, or lies where the site does not look. */
export function missingPictures(club: Club): readonly Finding[] {
  return [...club.catalogue.builds.values()].flatMap(({ id, result }) => {
    const { file } = pictureOf(result?.photo ?? "");
    if (file === undefined || isThere(club, file)) return [];
    const finding = findingOf(club.catalogue, "picture-there", {
      at: { kind: "build", id, pointer: "/result/photo" },
      level: "warning",
      says: inFolder(file) ? `There is no file ${file} in the data folder.` : `Pictures lie in ${folder}/, and ${file} does not.`,
      hint: `Put the picture into ${folder}/ and name it so, or say in words where it can be seen.`,
    });
    return [fromHere(finding, club.data)];
  });
}

export function pictureFiles(club: Club): readonly PictureFile[] {
  const names = [...club.catalogue.builds.values()].flatMap(({ result }) => pictureOf(result?.photo ?? "").file ?? []);
  return [...new Set(names)]
    .filter((file) => isThere(club, file))
    .map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(club.data.path, name))) }));
}
