// What the findings of reading mean, why they matter and how each is mended: for whoever meets a code and wants more than its one line.
import type { FindingCode, readingCodes } from "./finding.js";

/** A kind of finding, explained: `check --explain` prints it, and a page of the site lists them all. */
export interface Explanation {
  readonly code: FindingCode;
  /** What it means: what is wrong, or what records must be like. */
  readonly meaning: string;
  readonly why: string;
  readonly mend: string;
}

type Told = Omit<Explanation, "code">;

const told: Readonly<Record<(typeof readingCodes)[number], Told>> = {
  "yaml-syntax": {
    meaning: "The text is not YAML as records use it: a bracket or quote is open, a line is out of its column, a colon lacks its space.",
    why: "From that place on nobody can say what belongs to what, so the whole file counts as unread.",
    mend: "Mend the place that is named, and check again; one slip often hides the next.",
  },
  "yaml-duplicate-key": {
    meaning: "A field is written twice in the same place.",
    why: "One of the two would be passed over in silence, and nobody knows which was meant.",
    mend: "Keep the one that is right; several values of one field are a list.",
  },
  "yaml-alias": {
    meaning: "The text uses an anchor (&name) or an alias (*name).",
    why: "A value that stands somewhere else cannot be reviewed where it counts.",
    mend: 'Write the value out; put a text that begins with * or & in "quotes".',
  },
  "yaml-tab": {
    meaning: "A line is indented with a tab.",
    why: "A tab is as wide as each editor likes, so it cannot show what belongs to what.",
    mend: "Indent with spaces, two a level; most editors can be told to do it.",
  },
  "yaml-tag": {
    meaning: "The text uses a tag (!name).",
    why: "Records are plain values; a tag would make something else of them.",
    mend: 'Leave it out; put a text that begins with ! in "quotes".',
  },
  "yaml-many-documents": {
    meaning: "The file holds a second document, after a line ---.",
    why: "Only the first would be read, and the other would be missing everywhere.",
    mend: "Put each record in a file of its own.",
  },
  "yaml-comment": {
    meaning: "A text is cut short by a #: what follows is read as a comment.",
    why: "Half of what was written is lost without a word.",
    mend: 'Put the text in "quotes"; put a space after the # when a comment is meant.',
  },
  "file-encoding": {
    meaning: "The file is not UTF-8, or holds control characters; a byte order mark alone is only a warning.",
    why: "Letters would be guessed, and names would differ that look the same.",
    mend: "Save it as UTF-8 without a byte order mark (most editors: Save as, Encoding).",
  },
  "file-empty": {
    meaning: "The file holds no record.",
    why: "Its name promises a record, and every name that leads to it leads to nothing.",
    mend: "Fill it in, or delete it.",
  },
  "file-too-large": {
    meaning: "The file is far longer than any record.",
    why: "It is something else, a dump or a picture, and would only slow everything down.",
    mend: "Put each record in a file of its own, and keep dumps outside the data folder.",
  },
  "file-place": {
    meaning: "The file lies in no folder of records, or its name does not end in .yaml.",
    why: "The folder says what kind of record it is; without it nothing can be read.",
    mend: "Move it into the folder of its kind, and name it after its id.",
  },
  "file-schema-line": {
    meaning: "The first line does not name the schema of its kind.",
    why: "An editor that knows the schema offers the fields and marks slips while you type.",
    mend: "Put the expected line above the first one.",
  },
  "shape-unknown-field": {
    meaning: "A field is none of those that stand there.",
    why: "What is written in it would be read by nobody.",
    mend: "Correct its name, move it to where it belongs, or write it as a note.",
  },
  "shape-missing-field": {
    meaning: "A field that every such thing has is missing.",
    why: "What is left out is not known, and must not be taken for nothing.",
    mend: "Add it; where a fact may be unknown, write unknown.",
  },
  "shape-wrong-type": {
    meaning: "A value is of another sort than the field takes: a text for a number, a single value for a list.",
    why: "It would be read as something that was not meant, or not at all.",
    mend: "Write it as expected; a text that looks like a number stands in quotes.",
  },
  "shape-bad-word": {
    meaning: "A word is none of those the field knows.",
    why: "Rules go by these words; another one would switch a rule off in silence.",
    mend: "Take the listed word that comes nearest, and say the rest in a note.",
  },
  "shape-bad-value": {
    meaning: "The value is of the right sort, but cannot stand there: too small, too long, in another spelling, with its unit.",
    why: "A figure that cannot be is a slip, and sums made with it would be wrong.",
    mend: "Write it as expected, in the unit the field is kept in.",
  },
};

/** The findings of reading, in the order of their codes. */
export const readingExplanations: readonly Explanation[] = Object.entries(told).map(([code, words]) => ({
  code: code as FindingCode,
  ...words,
}));
