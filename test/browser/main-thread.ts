// How long a page's own thread is held up after each interaction, as processor time: what other work on the machine takes does not count.
import type { CDPSession } from "playwright-core";

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string; readonly data?: { readonly type?: string; readonly message?: string } };
}

export interface Held {
  readonly what: string;
  /** The two longest pieces of work after the tap: one may stand before the next paint, the other is that paint. In ms. */
  readonly ms: number;
}

/** Begins to trace; `end` gives one figure for each mark the page has set with console.timeStamp, followed by a tap or a key. */
export async function traceMainThread(session: CDPSession): Promise<{ readonly end: () => Promise<Held[]> }> {
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send("Tracing.start", {
    transferMode: "ReportEvents",
    traceConfig: { includedCategories: ["toplevel", "devtools.timeline"] },
  });
  const end = async () => {
    const complete = new Promise((done) => session.once("Tracing.tracingComplete", done));
    await session.send("Tracing.end");
    await complete;
    return heldIn(events);
  };
  return { end };
}

function heldIn(events: readonly TraceEvent[]): Held[] {
  const marks = events.filter((e) => e.name === "TimeStamp" && e.args.data?.message).sort((a, b) => a.ts - b.ts);
  const page = marks[0];
  if (!page) return [];
  const own = events.filter((e) => e.pid === page.pid && e.tid === page.tid);
  const tasks = own.filter((e) => e.name.endsWith("RunTask") && e.tdur !== undefined);
  const inputs = own.filter((e) => e.name === "EventDispatch" && /^(?:pointerdown|keydown)$/.test(e.args.data?.type ?? ""));
  return marks.flatMap((mark, i): Held[] => {
    const until = marks[i + 1]?.ts ?? Number.POSITIVE_INFINITY;
    const input = inputs.find((e) => e.ts >= mark.ts && e.ts < until);
    if (!input) return [];
    const after = tasks.filter((t) => t.ts + t.dur! > input.ts && t.ts < until).map((t) => t.tdur! / 1000);
    const [first = 0, second = 0] = after.sort((a, b) => b - a);
    return [{ what: mark.args.data!.message!, ms: Math.round((first + second) * 10) / 10 }];
  });
}
