// The worker's side of the talk: every message is a task, every task one reply. A fault of ours is told, never swallowed.
import { type Catalogue, gather, type PlannerRecords } from "../../catalogue/index.js";
import { must } from "../../records/index.js";
import { inflate } from "../../scripts/index.js";
import type { Message, RecordsFrom, Reply } from "./protocol.js";

export interface Port {
  onmessage: ((event: MessageEvent<Message>) => void) | null;
  postMessage(message: Reply): void;
}

type Handlers<T> = { readonly [K in keyof T]: (asks: never) => unknown };

/** Answers on a port with these handlers; one at a time, in the order asked. */
export function serve<T>(port: Port, handlers: Handlers<T>): void {
  let turn: Promise<void> = Promise.resolve();
  port.onmessage = ({ data: { number, task, asks } }) => {
    turn = turn.then(async () => {
      try {
        const gives = await handlers[task as keyof T](asks as never);
        port.postMessage({ number, gives });
      } catch (problem) {
        port.postMessage({ number, failed: problem instanceof Error ? problem.message : String(problem) });
      }
    });
  };
}

let opened: Catalogue | undefined;

/** The catalogue of this worker; it is opened before anything else is asked. */
export function catalogue(): Catalogue {
  return must(opened, "records that were opened");
}

export async function openRecords(records: RecordsFrom): Promise<Catalogue> {
  const { records: loaded, ...flaws } = ("text" in records ? JSON.parse(records.text) : await fetched(records.url)) as PlannerRecords;
  opened = gather(loaded, flaws);
  return opened;
}

async function fetched(url: string): Promise<unknown> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`The records could not be loaded (${response.status}).`);
  return JSON.parse(await (await inflate(await response.blob())).text());
}
