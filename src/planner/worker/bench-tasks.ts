// What the second worker does, begun only when it is wanted: build sheets with their drawings, and build files in and out.
import { waysOutCosts } from "../../pages/index.js";
import { readBuild, writeBuild } from "./files.js";
import { findCards } from "./find-cards.js";
import type { BenchTasks } from "./protocol.js";
import { catalogue, openRecords } from "./serve.js";
import { sheetOf } from "./sheet.js";

type Asks<K extends keyof BenchTasks> = BenchTasks[K]["asks"];
type Gives<K extends keyof BenchTasks> = BenchTasks[K]["gives"];

export const benchTasks = {
  async open({ records }: Asks<"open">): Promise<Gives<"open">> {
    await openRecords(records);
    return true;
  },
  sheet({ build, combination }: Asks<"sheet">): Gives<"sheet"> {
    return sheetOf(catalogue(), build, combination);
  },
  costs({ repairs }: Asks<"costs">): Gives<"costs"> {
    return waysOutCosts(catalogue(), { repairs });
  },
  find({ typed }: Asks<"find">): Gives<"find"> {
    return findCards(catalogue(), typed);
  },
  write: writeBuild,
  read(asks: Asks<"read">): Gives<"read"> {
    return readBuild(catalogue(), asks);
  },
};
