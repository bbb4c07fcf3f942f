// Words of a search: how text is cut into terms, and which everyday words count as the same. Used alike on records and on questions.

/** Words people use for one thing they see; each group is searched under its first word. */
const alike: readonly (readonly string[])[] = [
  ["hang", "freeze", "froze", "frozen", "lockup", "stuck", "stall", "halt"],
  ["restart", "reboot", "reset", "resets"],
  ["blank", "black", "dark", "empty"],
  ["picture", "screen", "display", "image", "monitor", "video"],
  ["garbage", "garbled", "rubbish", "scrambled", "nonsense", "gibberish"],
  ["corrupt", "corrupted", "damaged", "spoiled", "spoilt", "mangled"],
  ["slow", "slower", "sluggish", "crawl"],
  ["missing", "undetected", "unseen", "vanish", "disappear", "gone", "absent"],
  ["noise", "buzz", "hum", "hiss", "whine"],
  ["disk", "drive", "harddisk", "winchester"],
  ["memory", "ram"],
  ["firmware", "rom", "bios", "monitor-rom", "eprom"],
  ["card", "adapter", "controller"],
  ["crash", "crashes", "abort", "die", "dies", "died", "dead"],
  ["hot", "warm", "heat", "overheat"],
  ["wrong", "incorrect", "false", "bad"],
  ["start", "boot", "begin", "startup", "power-up"],
  ["error", "fault", "failure", "fail", "fails"],
];

const little = new Set(
  "a an and are as at be but by does do for from has have i if in is it its me my of on or so that the then there this to under was what when which while why will with without you your not no".split(
    " ",
  ),
);

/** A light hand with endings: "hangs", "hanging", "hanged" are one word. Words that hold a figure are left alone. */
export function root(word: string): string {
  if (/\d/.test(word) || word.length < 4) return word;
  let stem = word;
  if (stem.endsWith("ies") && stem.length > 4) return `${stem.slice(0, -3)}y`;
  for (const end of ["ing", "edly", "ed", "ly"]) {
    if (stem.endsWith(end) && stem.length - end.length >= 3) {
      stem = stem.slice(0, -end.length);
      if (/([bdgklmnprt])\1$/.test(stem) && !/(ll|ss)$/.test(stem)) stem = stem.slice(0, -1);
      return stem.replace(/e$/, "");
    }
  }
  if (/(ss|us|is)$/.test(stem)) return stem;
  if (/(xes|ches|shes|sses|zes)$/.test(stem)) return stem.slice(0, -2);
  return stem.replace(/s$/, "").replace(/e$/, "");
}

const firstWord = new Map(alike.flatMap((group) => group.map((word) => [root(word), root(group[0]!)] as const)));

/** A code as people type it: FS-200, fs200 and FS/200 are the same. */
function code(word: string): string {
  return word.replaceAll(/[^a-z0-9]/g, "");
}

function isCode(word: string): boolean {
  return /\d/.test(word);
}

function words(text: string): readonly string[] {
  return text
    .toLowerCase()
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .split(/[^a-z0-9./+-]+/)
    .map((w) => w.replaceAll(/^[./-]+|[./-]+$/g, ""))
    .filter(Boolean);
}

/** Terms of a record's text: codes whole and in parts, other words by their root. */
export function termsOf(text: string): readonly string[] {
  return words(text).flatMap((w) => {
    const parts = w.split(/[./+-]+/).filter(Boolean);
    if (isCode(w)) return [...new Set([code(w), ...parts])];
    return parts.filter((p) => !little.has(p)).map((p) => same(root(p)));
  });
}

/** Terms of a question: a code whole only, so that FS-200 does not find every 200. */
export function askedTerms(text: string): readonly string[] {
  return words(text).flatMap((w) => {
    if (isCode(w)) return [code(w)];
    return w
      .split(/[./+-]+/)
      .filter((p) => p !== "" && !little.has(p))
      .map((p) => same(root(p)));
  });
}

function same(word: string): string {
  return firstWord.get(word) ?? word;
}

/** The whole question as a name or number, without spaces and signs. */
export function asName(text: string): string {
  return code(text.toLowerCase());
}
