// JSON pointers: the steps to a value, joined and split. Apart from `place`, so that a browser that only points needs no YAML parser.

/** Splits a JSON pointer into its steps. */
export function steps(pointer: string): readonly string[] {
  return pointer === ""
    ? []
    : pointer
        .slice(1)
        .split("/")
        .map((s) => s.replaceAll("~1", "/").replaceAll("~0", "~"));
}

/** Joins a step onto a JSON pointer. */
export function step(pointer: string, to: string | number): string {
  return `${pointer}/${String(to).replaceAll("~", "~0").replaceAll("/", "~1")}`;
}
