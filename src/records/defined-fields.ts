// A field that is left out and a field that holds undefined are two things to a record; what is put together from what may be missing
// goes through here.

/** T without the fields that are undefined: those that may be are optional instead. */
export type DefinedFields<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** `definedFields({ id: "a", as: undefined })` is `{ id: "a" }`. */
export function definedFields<T extends object>(fields: T): DefinedFields<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as DefinedFields<T>;
}
