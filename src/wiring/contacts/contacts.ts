// Which contacts a switch needs: the contact plans of one switch that give every mode, with the fewest poles for each number of
// bank lines and the other way round. Uniform switches by counting, others by trying every assignment.
import type { Switch } from "../../records/index.js";
import type { Demands } from "../demand/demands.js";
import type { ContactSearch } from "./contact-plan.js";
import { searchedPlans } from "./searched-contacts.js";
import { isUniform, sectionsOf } from "./sections.js";
import { uniformPlans } from "./uniform-contacts.js";

export function contactPlans(part: Switch, demands: Demands, linesAvailable: number): ContactSearch {
  const sections = sectionsOf(part);
  const modes = demands.modes.length;
  if (part.positions.length < modes) {
    return { plans: [], complete: true, looked: 0, says: `${part.name} has ${part.positions.length} positions for ${modes} modes` };
  }
  if (isUniform(sections, part.positions.length)) return uniformPlans(part, sections, demands, linesAvailable);
  return searchedPlans(part, sections, demands, linesAvailable);
}
