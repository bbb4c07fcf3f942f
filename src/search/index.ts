// Search: which entries a question in a person's own words means, best first.
export { type Filters, type Findable, type Finder, finder, fits, type Hit } from "./find.js";
