// German and French words for what people see and ask for, as data: each with the English words that are sought instead. The records are
// in English; a visitor who is not finds the page all the same. Everyday words, from memory, no source.

const german: Readonly<Record<string, string>> = {
  karte: "card",
  steckkarte: "card",
  netzwerk: "network",
  netz: "network",
  klang: "sound",
  ton: "sound",
  platte: "disk",
  festplatte: "disk",
  laufwerk: "drive",
  diskette: "floppy",
  disketten: "floppy",
  band: "tape",
  bandlaufwerk: "tape",
  kassette: "cartridge",
  speicher: "memory",
  uhr: "clock",
  bild: "picture",
  bildschirm: "screen",
  anzeige: "display",
  schwarz: "black",
  schwarzer: "black",
  dunkel: "dark",
  leer: "blank",
  tastatur: "keyboard",
  tot: "dead",
  netzteil: "supply",
  spannung: "volts",
  schwach: "weak",
  schaltet: "trips",
  rauch: "smoke",
  drucker: "printer",
  druckt: "prints",
  unsinn: "garbage",
  muell: "garbage",
  lesbar: "unreadable",
  unlesbar: "unreadable",
  lautsprecher: "speakers",
  brummt: "hum",
  brummen: "hum",
  rauscht: "hiss",
  schalter: "switch",
  stellung: "position",
  falsch: "wrong",
  falsche: "wrong",
  falsches: "wrong",
  datum: "date",
  absturz: "crash",
  umschalten: "changing mode knob",
  dick: "thick",
  unterbrechung: "interrupt",
  leitung: "line",
  langsam: "slow",
  haengt: "hangs",
  hangt: "hangs",
  startet: "starts",
  fehler: "error",
  warm: "warm",
  heiss: "hot",
  kalt: "cold",
  schnee: "snow",
  flackert: "flicker",
  adresse: "address",
  steckplatz: "slot",
  brenner: "programmer",
  programmiergeraet: "programmer",
  maus: "mouse",
  fehlt: "missing",
};

const french: Readonly<Record<string, string>> = {
  carte: "card",
  reseau: "network",
  son: "sound",
  controleur: "controller",
  disque: "disk",
  dur: "disk",
  lecteur: "drive",
  bande: "tape",
  cartouche: "cartridge",
  disquette: "floppy",
  memoire: "memory",
  horloge: "clock",
  mauvaise: "wrong",
  mauvais: "wrong",
  ecran: "screen",
  noir: "black",
  vide: "blank",
  clavier: "keyboard",
  mort: "dead",
  alimentation: "supply",
  faible: "weak",
  fumee: "smoke",
  imprimante: "printer",
  imprime: "prints",
  importe: "garbage",
  quoi: "garbage",
  illisible: "unreadable",
  parleur: "speakers",
  ronfle: "hum",
  ronflement: "hum",
  epaisse: "thick",
  epais: "thick",
  lent: "slow",
  lente: "slow",
  programmateur: "programmer",
  plantage: "crash",
  plante: "hangs",
  changement: "changing mode knob",
  commutateur: "switch",
  interruption: "interrupt",
  ligne: "line",
  bloque: "hangs",
  demarre: "starts",
  demarrage: "start",
  chaud: "hot",
  froid: "cold",
  neige: "snow",
  tremble: "trembles",
  erreur: "error",
  redemarre: "restarts",
  manque: "missing",
};

/** Small words of both. */
export const foreignLittle: ReadonlySet<string> = new Set(
  `der die das den dem ein eine einer kein keine nicht zu zum zur beim bei im mit und ist von auf ab aus wird nach ohne
  le la les un une de du des d l n pas au aux avec et est trop ne en sur haut`.split(/\s+/),
);

/**
 * The English words for a foreign one, also where two words are written as one (Netzwerkkarte, Soundkarte); undefined where it is none that
 * is known. `isKnown`: whether the records have an English word.
 */
export function englishFor(word: string, isKnown: (word: string) => boolean): readonly string[] | undefined {
  const whole = english(word);
  if (whole) return whole;
  for (let at = 3; at <= word.length - 3; at++) {
    const second = english(word.slice(at));
    const first = word.slice(0, at);
    const told =
      english(first) ?? (first.endsWith("s") ? english(first.slice(0, -1)) : undefined) ?? (isKnown(first) ? [first] : undefined);
    if (second && told) return [...told, ...second];
  }
  return undefined;
}

function english(word: string): readonly string[] | undefined {
  const told = Object.hasOwn(german, word) ? german[word] : Object.hasOwn(french, word) ? french[word] : undefined;
  return told?.split(" ");
}
