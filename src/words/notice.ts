// What is wrong with the records behind an answer or a page, in a sentence that goes with it. Nothing when nothing is wrong.
import type { Flaws } from "../catalogue/index.js";
import { countText, listText } from "./text.js";

/** Most places named; `check` names every one. */
const mostPlaces = 5;

type Placed = Pick<Flaws["errors"][number], "file" | "line" | "column">;

export function noticeText({
  unread,
  errors,
}: {
  readonly unread: readonly Placed[];
  readonly errors: readonly Placed[];
}): string | undefined {
  const others = errors.filter((error) => !unread.some((one) => placeOf(one) === placeOf(error) || one.file === error.file));
  const lost =
    unread.length === 0
      ? []
      : [
          `Made although ${countText(unread.length, "record")} could not be read: ${places(unread)}. What ${unread.length === 1 ? "it" : "they"} could bear on is not known here.`,
        ];
  const wrong =
    others.length === 0
      ? []
      : [`The records have ${countText(others.length, unread.length > 0 ? "more error" : "error")}: ${places(others)}.`];
  const told = [...lost, ...wrong];
  return told.length === 0 ? undefined : told.join(" ");
}

function placeOf({ file, line, column }: Placed): string {
  return `${file}:${line}:${column}`;
}

function places(of: readonly Placed[]): string {
  const named = of.slice(0, mostPlaces).map(placeOf);
  return listText(of.length > mostPlaces ? [...named, `${of.length - mostPlaces} more`] : named);
}
