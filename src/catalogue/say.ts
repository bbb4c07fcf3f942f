// Sentences that many house rules share.
import { nearest, quoteText, truncateList } from "../records/index.js";
import type { Ref } from "./ref.js";
import type { Draft } from "./rule.js";

/** A name that is none of those declared, with the nearest one and the place where they are declared. Names stand as a record writes them. */
export function noSuch(what: string, name: string, declared: Iterable<string>, at: Ref, home?: Ref): Draft {
  const names = [...declared];
  const near = nearest(name, names);
  return {
    says: `${name} is no ${what}.`,
    at,
    expected: names.length > 0 ? `one of: ${truncateList(names, 8, quoteText)}` : `none is declared`,
    actual: name,
    hint: near ? `Did you mean ${quoteText(near)}?` : `Correct it, or declare ${name} first.`,
    ...(home ? { related: [{ says: "They are declared here.", at: home }] } : {}),
  };
}
