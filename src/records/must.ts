// What must be there by the way the program is made. A gap is our own fault and is told where it is, not as "undefined" somewhere later.

/** The value, which must be there; `what` names it in the fault. */
export function must<T>(value: T, what: string): NonNullable<T> {
  if (value === undefined || value === null) throw new Error(`Not there, though it must be: ${what}.`);
  return value;
}

/** What a map holds under a key that it must have. */
export function entryOf<K, V>(map: ReadonlyMap<K, V>, key: K): NonNullable<V> {
  return must(map.get(key), `an entry ${String(key)}`);
}

/** What a list, a text or bytes hold at a place that they must have; counted from 0. */
export function itemAt<T>(list: ArrayLike<T>, at: number): NonNullable<T> {
  const item = list[at];
  return item === undefined || item === null ? must(item, `item ${at} of ${list.length}`) : item;
}

/** The last of a list that is not empty. */
export function lastOf<T>(list: ArrayLike<T>): NonNullable<T> {
  return itemAt(list, list.length - 1);
}
