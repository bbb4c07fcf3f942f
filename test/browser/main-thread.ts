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
  /** The work from an event to the paint after it, of the events of a tap or a key the longest. In ms. */
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
  const tasks = own.filter((e) => e.name.endsWith("RunTask") && e.tdur !== undefined).sort((a, b) => a.ts - b.ts);
  const inputs = own.filter(
    (e) => e.name === "EventDispatch" && /^(?:pointer(?:down|up)|click|key(?:down|up))$/.test(e.args.data?.type ?? ""),
  );
  const paints = own.filter((e) => e.name === "Paint" || e.name === "Commit").map((e) => e.ts);
  return marks.flatMap((mark, i): Held[] => {
    const until = marks[i + 1]?.ts ?? Number.POSITIVE_INFINITY;
    const events = inputs.filter((e) => e.ts >= mark.ts && e.ts < until);
    if (events.length === 0) return [];
    const works = events.map((event) => {
      // Where nothing is painted only the event's own task holds the page up.
      const handled = event.ts + (event.dur ?? 0);
      const painted = paints.filter((ts) => ts > handled && ts < until).reduce((first, ts) => Math.min(first, ts), handled);
      return tasks.filter((t) => t.ts <= painted && t.ts + t.dur! > event.ts).reduce((sum, t) => sum + t.tdur! / 1000, 0);
    });
    return [{ what: mark.args.data!.message!, ms: Math.round(Math.max(...works) * 10) / 10 }];
  });
}
