// What the parser stumbles over, in the words of somebody who types a record: what is wrong, and what to do.
import type { YAMLError } from "yaml";

type Words = readonly [says: string, hint: string];

const colon: Words = ["A text with a colon and a space is read as a field name.", 'Put the text in "quotes".'];
const noField: Words = [
  "This line is no field: the colon and the space after the name are missing.",
  "Write name: value. A text that goes on over several lines is indented deeper than its name.",
];
const indent: Words = [
  "The line is not indented like its neighbours.",
  "Fields of one thing start in the same column; lists begin with a dash and a space.",
];
export const anchorWords: Words = [
  "Anchors (&name) and aliases (*name) are not used in records.",
  'Write the value out; put a text that begins with * or & in "quotes".',
];
export const tagWords: Words = ["Tags (!name) are not used in records.", 'Leave it out; put a text that begins with ! in "quotes".'];

/** By what the parser says where one code stands for several slips of a writer. */
const byMessage: readonly (readonly [RegExp, Words])[] = [
  [/end with a [\]}]/, ["A bracket opened above is not closed.", "Close [ with ] and { with }, before the next field."]],
  [/flow-(seq|map)-end/, ["There is a closing bracket too many.", 'Take it out, or put a text with brackets in "quotes".']],
  [
    /scalar at node end/,
    [
      "The text goes on after its closing quote.",
      "Put the whole text in one pair of quotes; inside 'single quotes' an apostrophe is written twice.",
    ],
  ],
  [
    /closing .*quote/,
    ["A quote is opened here and not closed.", "Close it with the same quote, or put the whole text in the other sort of quotes."],
  ],
  [
    /block-seq-ind on same line/,
    [
      "A list does not begin on the line of its name.",
      'Put each entry on a line of its own below, or write [a, b]; put a text that begins with a dash in "quotes".',
    ],
  ],
  [/Implicit map keys need/, noField],
  [/without - indicator|block sequence may not/, indent],
  [/within flow collections/, colon],
];

/** `rest` is the source from the place of the error to the end of its line. */
export function yamlWords(error: YAMLError, rest: string): Words {
  const found = byMessage.find(([message]) => message.test(error.message));
  if (found) return found[1];
  switch (error.code) {
    case "DUPLICATE_KEY":
      return ["This field is written twice in the same place.", "Keep one of the two."];
    case "TAB_AS_INDENT":
      return ["The line is indented with a tab.", "Indent with spaces, two a level."];
    case "MULTIPLE_DOCS":
      return ["The file holds a second document, after ---.", "Put each record in a file of its own."];
    case "BAD_ALIAS":
    case "ALIAS_PROPS":
    case "MULTIPLE_ANCHORS":
      return anchorWords;
    case "TAG_RESOLVE_FAILED":
    case "MULTIPLE_TAGS":
      return tagWords;
    case "BAD_INDENT":
      return indent;
    case "BLOCK_AS_IMPLICIT_KEY":
      return /: /.test(rest)
        ? colon
        : ["The line below is indented deeper, as if it belonged to this value.", "Start it in the column of its neighbours."];
    case "MULTILINE_IMPLICIT_KEY":
      return /:(\s|$)/.test(rest) ? colon : noField;
    case "BAD_SCALAR_START":
      return ["A text cannot begin with this character.", 'Put the text in "quotes".'];
    case "MISSING_CHAR":
      return ["A character is missing here.", "Close what was opened; a field is written name: value."];
    case "BAD_DQ_ESCAPE":
      return [
        "In double quotes a backslash begins a special character, and this is none.",
        "Use 'single quotes' for a text with backslashes.",
      ];
    default:
      return ["This is not YAML as records use it.", "Fields are written name: value, one a line; lists begin with a dash and a space."];
  }
}
