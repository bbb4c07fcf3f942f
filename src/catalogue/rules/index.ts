// The house rules, in the order they are told.
import type { Rule } from "../rule.js";
import { danglingReference } from "./dangling-reference.js";

export const rules: readonly Rule[] = [danglingReference];
