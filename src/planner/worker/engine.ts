// The page's side of a worker: started when first asked, ended and begun again when it is deep in something nobody wants any more.
import { must } from "../../records/index.js";
import type { BenchTasks, RecordsFrom, Reply, Tasks } from "./protocol.js";

/** What of a Worker is used; the single file has a stand-in where a browser allows none. */
export type Script = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

/** Starts a worker script by its name. */
export type Start = (name: "solve" | "bench") => Script;

type Asks<T, K extends keyof T> = T[K] extends { readonly asks: infer A } ? A : never;
type Gives<T, K extends keyof T> = T[K] extends { readonly gives: infer G } ? G : never;

export interface Connection<T> {
  /** What the worker said on opening the records. */
  opened(): Promise<Gives<T, "open" & keyof T>>;
  ask<K extends keyof T>(task: K, asks: Asks<T, K>): Promise<Gives<T, K>>;
  /** A second worker of the same kind over the same records. */
  another(): Connection<T>;
  /** Ends the worker and whatever it is doing; the next question starts another. */
  end(): void;
}

/** Said instead of a reply when the worker was ended before it had one. */
export class Ended extends Error {}

interface Waiting {
  readonly done: (value: unknown) => void;
  readonly fail: (problem: Error) => void;
}

export function connect<T extends Tasks | BenchTasks>(name: "solve" | "bench", start: Start, records: RecordsFrom): Connection<T> {
  let worker: Script | undefined;
  let opening: Promise<unknown> | undefined;
  let number = 0;
  const waiting = new Map<number, Waiting>();

  const post = (task: string, asks: unknown) =>
    new Promise<unknown>((done, fail) => {
      number += 1;
      waiting.set(number, { done, fail });
      must(worker, "a worker that was started").postMessage({ number, task, asks });
    });

  const failAll = (problem: Error) => {
    const all = [...waiting.values()];
    waiting.clear();
    for (const { fail } of all) fail(problem);
  };

  const running = () => {
    if (worker) return;
    worker = start(name);
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const asked = waiting.get(data.number);
      waiting.delete(data.number);
      if ("failed" in data) asked?.fail(new Error(data.failed));
      else asked?.done(data.gives);
    };
    worker.onerror = (event) => failAll(new Error((event as ErrorEvent).message || "A script could not be loaded."));
    opening = post("open", { records });
    opening.catch(() => {});
  };

  return {
    opened() {
      running();
      return opening as never;
    },
    ask(task, asks) {
      running();
      return post(task as string, asks) as never;
    },
    another: () => connect<T>(name, start, records),
    end() {
      worker?.terminate();
      worker = undefined;
      failAll(new Ended());
    },
  };
}
