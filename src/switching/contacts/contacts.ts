// Which contacts a switch needs: the contact plans of one switch that give every mode, with the fewest poles for each number of
// bank lines and the other way round. Uniform switches by counting, others by trying every assignment.
import type { Switch } from "../../records/index.js";
import type { Demands } from "../demand/demands.js";
import type { ContactSearch } from "./contact-plan.js";
import { searchedPlans } from "./searched-contacts.js";
import { isUniform, sectionsOf, throughHubs } from "./sections.js";
import { uniformPlans } from "./uniform-contacts.js";

const foundBefore = new WeakMap<Demands, Map<string, ContactSearch>>();

/** Asked again for the runner-up and for ways out, so each answer is kept as long as the demands are. */
export function contactPlans(part: Switch, demands: Demands, linesAvailable: number): ContactSearch {
  const known = foundBefore.get(demands) ?? new Map<string, ContactSearch>();
  foundBefore.set(demands, known);
  const key = `${part.id} ${linesAvailable}`;
  const found = known.get(key) ?? searchPlans(part, demands, linesAvailable);
  known.set(key, found);
  return found;
}

function searchPlans(part: Switch, demands: Demands, linesAvailable: number): ContactSearch {
  const none = (says: string): ContactSearch => ({ plans: [], complete: true, looked: 0, says });
  const modes = demands.modes.length;
  if (part.positions.length < modes) return none(`${part.name} has ${part.positions.length} positions for ${modes} modes`);
  const sections = sectionsOf(part);
  const plain = throughHubs(part, sections);
  if ("position" in plain)
    return none(
      `${part.name} joins terminals in position ${plain.position} that do not meet its common one there; only switches with one common terminal a pole are wired here`,
    );
  if (isUniform(sections, part.positions.length)) return uniformPlans(plain.part, sections, demands, linesAvailable);
  return searchedPlans(plain.part, sections, demands, linesAvailable);
}
