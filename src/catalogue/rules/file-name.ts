// A record's file bears its id, so that a name in one record leads to a file.
import { kinds, quoteText } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const fileName: Rule = {
  name: "file-name",
  says: "A record's file is named after its id.",
  why: "Ids lead to files: somebody who reads a name must find the record.",
  mend: "Rename the file to its id, or write the file's name as the id.",
  scope: ["club", "bus", "board", "firmware", "card", "conflict", "build", "part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const [key, file] of catalogue.files) {
      const [kind, id] = key.split("/") as [keyof typeof kinds, string];
      const name = file.slice(file.lastIndexOf("/") + 1).replace(/\.yaml$/, "");
      if (name === id) continue;
      yield {
        says: `The id is ${id}, but the file is named ${name}.yaml.`,
        at: ref(kind, id, "id"),
        expected: name,
        actual: id,
        hint: `Rename the file to ${kinds[kind].folder}/${id}.yaml, or write id: ${quoteText(name)}.`,
      };
    }
  },
};
