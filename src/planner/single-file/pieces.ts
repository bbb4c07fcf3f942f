// The pieces of the single file: each is compressed and inflated the first time it is wanted. Also the workers, which are such pieces.
import { must } from "../../records/index.js";
import { inflate } from "../../scripts/index.js";
import type { Script } from "../worker/engine.js";
import type { Message, Reply } from "../worker/protocol.js";

const texts = new Map<string, Promise<string>>();

export function piece(name: string): Promise<string> {
  const known = texts.get(name);
  if (known) return known;
  const text = textFrom(document.getElementById(`piece-${name}`)?.textContent ?? "");
  texts.set(name, text);
  return text;
}

function textFrom(base64: string): Promise<string> {
  const letters = atob(base64);
  const bytes = Uint8Array.from(letters, (c) => c.charCodeAt(0));
  return inflate(new Blob([bytes])).then((whole) => whole.text());
}

interface Port {
  onmessage: ((event: { data: Message }) => void) | null;
  postMessage(reply: Reply): void;
}

declare global {
  // Where a worker script that has to run in the page itself puts its beginning.
  var slotwrightInPage: Record<string, (self: Port) => void> | undefined;
}

/** A worker from a piece; where the browser allows none from a disk, the same script in the page itself. */
export function scriptFrom(name: "solve" | "bench"): Script {
  let ended = false;
  let inner: Script | undefined;
  const waiting: unknown[] = [];
  const outer: Script = {
    onmessage: null,
    onerror: null,
    postMessage: (message: unknown) => (inner ? inner.postMessage(message) : waiting.push(message)),
    terminate: () => {
      ended = true;
      inner?.terminate();
    },
  };
  const begin = (made: Script) => {
    inner = made;
    made.onmessage = (event) => outer.onmessage?.call(outer as Worker, event);
    for (const message of waiting.splice(0)) made.postMessage(message);
  };
  piece("workers").then((text) => {
    if (!ended) begin(fromBlob(text) ?? inPage(name, text));
  });
  return outer;
}

function fromBlob(text: string): Script | undefined {
  try {
    return new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })));
  } catch {
    return undefined;
  }
}

export function inPage(name: string, text: string): Script {
  const starts = globalThis.slotwrightInPage ?? {};
  globalThis.slotwrightInPage = starts;
  if (!starts[name]) {
    const script = document.createElement("script");
    script.textContent = `slotwrightInPage[${JSON.stringify(name)}]=function(self){${text}\n};`;
    document.head.append(script);
  }
  const made: Script = {
    onmessage: null,
    onerror: null,
    // A turn of the clock in between, so that the page is drawn before it works.
    postMessage: (data: Message) => void setTimeout(() => port.onmessage?.({ data })),
    terminate: () => {
      port.onmessage = null;
    },
  };
  const port: Port = {
    onmessage: null,
    postMessage: (data) => void setTimeout(() => made.onmessage?.call(made as Worker, { data } as MessageEvent)),
  };
  must(starts[name], name)(port);
  return made;
}
