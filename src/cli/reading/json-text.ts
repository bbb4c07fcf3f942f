// JSON text, gone through strictly before the platform's parser reads it: where it goes wrong, said in our words, which numbers a double
// would round, and which names stand twice in one object (the platform's parser does not tell of the last two). Also finds the place of a
// value that turns out to be wrong later: the text keeps all positions, so that nothing needs to be kept while all is well.

/** Names and numbers that lead from the whole value to one inside it. */
export type Path = readonly (string | number)[];

/** A mistake in the text, as an offset; no value was read. */
export class JsonMistake extends Error {
  constructor(
    readonly offset: number,
    readonly says: string,
  ) {
    super(says);
  }
}

/** The value of a text; throws the first JsonMistake. */
export function readJson(text: string): unknown {
  new Scanner(text).whole();
  return JSON.parse(text);
}

/** Where a value stands, or, with `key`, the name it stands under. The text must be sound. */
export function offsetOf(text: string, path: Path, key = false): number {
  return new Scanner(text).find(path, key);
}

/** Line and column, both from 1, as "3:14". */
export function lineAndColumn(text: string, offset: number): string {
  let line = 1;
  let start = 0;
  for (let at = text.indexOf("\n"); at >= 0 && at < offset; at = text.indexOf("\n", start)) {
    line++;
    start = at + 1;
  }
  return `${line}:${offset - start + 1}`;
}

/** Deeper than any file that is meant; the scan goes down by recursion. */
const deepest = 100;

const numberHere = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const textHere = /"(?:[^"\\]|\\.)*"/y;
const wordHere = /true|false|null/y;
const spaceHere = /[ \t\n\r]*/y;

class Scanner {
  private at = 0;
  private depth = 0;

  constructor(private readonly text: string) {}

  whole(): void {
    this.space();
    this.value();
    this.space();
    if (this.at < this.text.length) this.fail(this.at, "expected the end of the file here");
  }

  find(path: Path, key: boolean): number {
    this.space();
    for (const [i, step] of path.entries()) {
      let found = -1;
      let name = -1;
      this.members((at, of) => {
        if (found >= 0 || of !== step) return;
        found = this.at;
        name = at;
      });
      if (found < 0) return this.at;
      if (key && i === path.length - 1) return name;
      this.at = found;
    }
    return this.at;
  }

  private value(): void {
    const character = this.text[this.at];
    if (character === "{" || character === "[") {
      const known = character === "{" ? new Set<string>() : undefined;
      this.members((at, name) => {
        if (known?.has(name as string)) this.fail(at, `${JSON.stringify(name)} stands here twice; keep one of the two`);
        known?.add(name as string);
      });
    } else if (character === '"') this.name();
    else if (character === "-" || (character !== undefined && character >= "0" && character <= "9")) this.number();
    else if (this.match(wordHere) === undefined) {
      const end = character === undefined;
      this.fail(
        this.at,
        end ? "the file ends where a value was expected" : "expected a value: an object, a list, a text, a number, true or false",
      );
    }
  }

  /** Goes through an object or a list; `visit` is told of each member, its value being next, and where its name stands. */
  private members(visit: (at: number, name: string | number) => void): void {
    const { text } = this;
    const isObject = text[this.at] === "{";
    const close = isObject ? "}" : "]";
    if (!isObject && text[this.at] !== "[") return;
    if (++this.depth > deepest) this.fail(this.at, `values are nested more than ${deepest} deep here`);
    this.at++;
    this.space();
    for (let index = 0; text[this.at] !== close; index++) {
      if (index > 0) {
        if (text[this.at] !== ",")
          this.fail(this.at, this.at < text.length ? `expected "," or "${close}"` : `the file ends before "${close}"`);
        this.at++;
        this.space();
      }
      const start = this.at;
      let name: Path[number] = index;
      if (isObject) {
        name = this.name();
        this.space();
        if (text[this.at] !== ":") this.fail(this.at, `expected ":" after ${JSON.stringify(name)}`);
        this.at++;
        this.space();
      }
      visit(start, name);
      this.value();
      this.space();
    }
    this.at++;
    this.depth--;
  }

  private name(): string {
    const start = this.at;
    if (this.text[start] !== '"')
      return this.fail(start, start < this.text.length ? 'expected a name in "..."' : "the file ends before a name");
    const found = this.match(textHere);
    if (found === undefined) return this.fail(start, 'this text is not closed by "');
    try {
      return JSON.parse(found);
    } catch {
      return this.fail(start, "this text holds a line break, a control character or a \\ that JSON does not know");
    }
  }

  private number(): void {
    const start = this.at;
    const found = this.match(numberHere);
    if (found === undefined) this.fail(start, "this is not a number as JSON writes it");
    else if (!held(found)) this.fail(start, `the number ${found} cannot be held exactly; give one of at most 15 digits`);
  }

  private space(): void {
    this.match(spaceHere);
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  private fail(offset: number, says: string): never {
    throw new JsonMistake(offset, says);
  }
}

/** Whether the double nearest to a written number is told apart from all others by just that number: 0.1 is, 1e400 is not. */
function held(written: string): boolean {
  if (written.length <= 15 && !/[eE]/.test(written)) return true;
  const number = Number(written);
  return Number.isFinite(number) && plain(written) === plain(String(number));
}

/** The digits without zeros at either end, and the power of ten of the last. */
function plain(written: string): string {
  const [mantissa, exponent] = written.replace("-", "").toLowerCase().split("e") as [string, string?];
  const [whole, part = ""] = mantissa.split(".") as [string, string?];
  const digits = `${whole}${part}`.replace(/^0+/, "");
  const kept = digits.replace(/0+$/, "");
  return kept === "" ? "0" : `${kept}e${Number(exponent ?? 0) - part.length + digits.length - kept.length}`;
}
