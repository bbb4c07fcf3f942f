// Records drawn at random, or changed for one case: a field may be drawn as undefined, which means that it is left out.

/** T, of which any field may be undefined. */
export type Loose<T> = T extends readonly (infer E)[]
  ? readonly Loose<E>[]
  : T extends object
    ? { [K in keyof T]: Loose<T[K]> | undefined }
    : T;

/** The record itself: fields that are undefined are left out, at every depth. What must be there is not asked for. */
export function tidy<T>(loose: Loose<T>): T {
  return JSON.parse(JSON.stringify(loose)) as T;
}
