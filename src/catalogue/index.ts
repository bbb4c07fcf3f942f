// The catalogue: linked records, look-ups, house rules. Imports records.
export * from "./catalogue.js";
export * from "./versions.js";
