// Words people use for one thing, as data. Each group is searched under its first word; a word may stand in several groups, and a question
// then means any of them. Common usage of the trade, no source.

export const alike: readonly (readonly string[])[] = [
  ["hang", "freeze", "froze", "frozen", "lockup", "stuck", "stall", "halt"],
  ["lock", "stuck", "jam", "jammed"],
  ["restart", "reboot", "reset", "resets"],
  ["blank", "black", "dark", "empty"],
  ["picture", "screen", "display", "image", "monitor", "video"],
  ["tremble", "flicker", "shake", "jitter", "wobble", "unsteady"],
  ["garbage", "garbled", "rubbish", "scrambled", "nonsense", "gibberish"],
  ["corrupt", "corrupted", "corruption", "damaged", "spoiled", "spoilt", "mangled"],
  ["slow", "slower", "sluggish", "crawl"],
  ["missing", "undetected", "unseen", "vanish", "disappear", "gone", "absent"],
  ["noise", "buzz", "hum", "hiss", "whine"],
  ["disk", "disc", "drive", "harddisk", "winchester"],
  ["memory", "ram"],
  ["silicon", "ram"],
  ["firmware", "rom", "bios", "monitor-rom", "eprom", "prom"],
  ["card", "adapter", "controller", "interface"],
  ["crash", "crashes", "abort", "die", "dies", "died", "dead"],
  ["hot", "warm", "heat", "overheat"],
  ["cold", "winter", "frost", "chilly"],
  ["wrong", "incorrect", "false", "bad"],
  ["start", "boot", "begin", "startup", "power-up", "power-on"],
  ["error", "fault", "failure", "fail", "fails"],
  ["sag", "weak", "dip", "trip", "droop", "low", "overload", "hiccup"],
  ["exchange", "exchanged", "swap", "swapped", "reversed", "mirror", "mirrored", "interchanged", "crossed"],
  ["turn", "spin", "spun"],
  ["line", "interrupt", "irq"],
  ["programmer", "burner", "prommer"],
  ["burn", "burned", "burnt", "program", "programmed"],
  ["stream", "streamer"],
  ["analyser", "analyzer"],
  ["colour", "color"],
  ["supply", "psu"],
  ["clock", "rtc"],
  ["sound", "audio"],
  ["speaker", "loudspeaker"],
  ["trace", "tracer"],
  ["forget", "lose", "loses", "lost", "forgot"],
  ["result", "answer", "total"],
  ["half", "halves"],
  ["device", "chip", "eprom"],
];

/** Several words for what the records say otherwise; replaced before the text is cut. */
export const phrases: readonly (readonly [RegExp, string])[] = [
  [/\breal[ -]time clocks?\b/g, "clock"],
  [/\bram ?dis[ck]s?\b/g, "silicon disk"],
  [/\bpower[ -]supply\b/g, "supply"],
  [/\btape drives?\b|\blecteurs? de bande\b/g, "tape"],
];

/** A question with one of these speaks of what is seen, not of a thing by its name: "no picture", "kein Bild", "pas d'image". */
export const denying: ReadonlySet<string> = new Set(
  "no not nothing never without kein keine keinen nicht ohne pas aucun aucune sans".split(" "),
);

/** Words of a question that say nothing of the thing asked for. */
export const little: ReadonlySet<string> = new Set(
  `a an and are as at be but by can could do does did for from get has have how i if in into is it its itself me my of off on only or
  should so some that the then there they this to too under use used was what when where which while who why will with without would you
  your not no after although always any`.split(/\s+/),
);

/** What is asked of a thing that is named: with its name they mean the thing itself. */
export const asking: ReadonlySet<string> = new Set(
  "need needs want fit fits work works run runs support supports compatible firmware version versions board machine computer card slot jumper jumpers setting settings".split(
    " ",
  ),
);
