// A bench result speaks of the modes the build has, and its parts agree with the whole.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const resultModes: Rule = {
  name: "result-modes",
  says: "A result speaks of every mode of its build and agrees with itself.",
  why: "A test proves each mode that it speaks of; a mode without a result, or a whole that contradicts its parts, proves nothing.",
  mend: "Give every mode its outcome, and make the outcome as a whole agree with them.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      const result = build.result;
      if (!result) continue;
      const modes = (build.modes ?? []).map((m) => m.id);
      const at = (...path: (string | number)[]) => ref("build", build.id, "result", ...path);
      for (const [i, m] of (result.modes ?? []).entries()) {
        // A mode the build lacks is told by build-names.
        if (!modes.includes(m.mode)) continue;
        if (result.outcome === "worked" && m.outcome !== "worked") {
          yield {
            says: `The whole is said to have worked, but mode ${m.mode} ${m.outcome === "failed" ? "failed" : "worked only partly"}.`,
            at: at("outcome"),
            related: [{ says: "The mode's result.", at: at("modes", i, "outcome") }],
            hint: "Write partly for the whole, or correct the mode.",
          };
        }
      }
      const told = result.modes ?? [];
      if (result.outcome === "failed" && told.length > 0 && told.length === modes.length && told.every((m) => m.outcome === "worked")) {
        yield {
          says: "The whole is said to have failed, but every mode worked.",
          at: at("outcome"),
          related: [{ says: "The results of the modes.", at: at("modes") }],
          hint: "Correct the whole, or say in which mode it failed.",
        };
      }
      const silent = modes.filter((m) => !told.some((r) => r.mode === m));
      if (modes.length > 1 && silent.length > 0) {
        yield {
          level: "warning",
          says: `Nothing is said of mode ${silent.join(", ")}; a result counts only for modes that were tried.`,
          at: at(...(told.length > 0 ? ["modes"] : ["outcome"])),
          hint: "Add what came of it, or take the mode out of the build.",
        };
      }
    }
  },
};
