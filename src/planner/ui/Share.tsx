// Taking the build away and bringing one in: address, text for a post, a build file for the club's data, a file dropped or pasted.
import { useEffect, useRef, useState } from "preact/hooks";
import { type Finding, where } from "../../records/index.js";
import { forumText } from "../state/forum.js";
import { useApp } from "./app-context.js";
import { Part } from "./bits.js";

/** An id from a name: "Tape corner, 16T" -> "tape-corner-16t". */
export function idFrom(name: string): string {
  const id = name
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return id === "" ? "my-build" : /^[a-z0-9]/.test(id) ? id : `b-${id}`;
}

export function Share() {
  const app = useApp();
  const { store, build, catalogue, bench, answer } = app;
  const [said, setSaid] = useState("");
  const copy = async (text: string, done: string) => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid(done);
    } catch {
      // Without leave to use the clipboard the text is shown, ready to be copied by hand.
      setShown(text);
      setSaid("Your browser keeps pages from the clipboard. The text stands below, to be copied.");
    }
  };
  const [shown, setShown] = useState("");
  const forum = () => (answer ? forumText(build, answer, (key) => catalogue.names[key] ?? key.split("/")[1] ?? key, location.href) : "");
  const download = async () => {
    const text = await bench.ask("write", { build });
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "text/yaml" }));
    link.download = `${build.id}.yaml`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    setSaid(`${build.id}.yaml is written. Put it into the club's builds folder, or keep it; "slotwright check" reads it.`);
  };
  return (
    <Part id="share" title="Keep it, pass it on">
      <label>
        Name of this build
        <input
          type="text"
          value={build.name}
          onChange={(e) => {
            const name = e.currentTarget.value.trim() || "My build";
            store.rename(idFrom(name), name);
          }}
        />
      </label>
      <p class="acts">
        <button
          type="button"
          onClick={() => copy(location.href, "The address is copied. It holds the whole build; nothing is kept on a server.")}
        >
          Copy the address
        </button>
        {answer ? (
          <button type="button" onClick={() => copy(forum(), "The text is copied, ready for a post or a letter.")}>
            Copy as text
          </button>
        ) : null}
        <button
          type="button"
          disabled={build.board === ""}
          onClick={() => download().catch((problem: Error) => setSaid(`The file could not be written: ${problem.message}`))}
        >
          Download the build file
        </button>
        {build.board === "" ? <span class="more">A build file needs a board.</span> : null}
      </p>
      <p role="status">{said}</p>
      {shown ? <textarea readonly rows={10} aria-label="Text to copy" value={shown} onFocus={(e) => e.currentTarget.select()} /> : null}
      <Bring />
    </Part>
  );
}

interface Takes {
  readonly takeFile: (file: File | undefined) => Promise<void>;
  readonly take: (text: string, file: string) => Promise<void>;
}

/** A file dropped anywhere is opened here rather than shown by the browser in place of the planner; so is a build pasted outside a field. */
function anywhere(to: { readonly current: Takes }, opened: () => void): () => void {
  const ended = new AbortController();
  const { signal } = ended;
  const hasFile = (e: DragEvent) => e.dataTransfer?.types.includes("Files") ?? false;
  document.addEventListener("dragover", (e) => hasFile(e) && e.preventDefault(), { signal });
  document.addEventListener(
    "drop",
    (e) => {
      if (!hasFile(e)) return;
      e.preventDefault();
      opened();
      void to.current.takeFile(e.dataTransfer?.files[0]);
    },
    { signal },
  );
  document.addEventListener(
    "paste",
    (e) => {
      const text = e.clipboardData?.getData("text/plain") ?? "";
      const typing = e.target instanceof HTMLElement && e.target.matches("input, textarea, select");
      if (typing || !/^board:/m.test(text)) return;
      e.preventDefault();
      opened();
      void to.current.take(text, "pasted.yaml");
    },
    { signal },
  );
  return () => ended.abort();
}

function Bring() {
  const { store, bench } = useApp();
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const [said, setSaid] = useState("");
  const [over, setOver] = useState(false);
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLTextAreaElement>(null);
  const read = async (text: string, file: string) => {
    const pasted = await bench.ask("read", { text, file });
    if (pasted.kind !== "read") {
      setFindings(pasted.findings);
      const why = pasted.kind === "unreadable" ? "cannot be read as a build" : "names something that these records do not have";
      setSaid(`${file} ${why}. Nothing was changed.`);
      return;
    }
    setFindings(pasted.warnings);
    setSaid(`${pasted.build.name} is opened.`);
    if (box.current) box.current.value = "";
    store.open(pasted.build);
  };
  const take = (text: string, file: string) => read(text, file).catch((problem: Error) => setSaid(problem.message));
  const takeFile = async (file: File | undefined) => {
    if (!file) return;
    if (file.size > 1_000_000) return setSaid(`${file.name} is far too large for a build file.`);
    await take(await file.text(), file.name);
  };
  const latest = useRef({ takeFile, take });
  latest.current = { takeFile, take };
  useEffect(() => anywhere(latest, () => setOpen(true)), []);
  return (
    <details class="bring" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>Open a build file</summary>
      <fieldset
        class={over ? "drop over" : "drop"}
        onDragOver={(e) => {
          e.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(e) => {
          e.preventDefault();
          setOver(false);
        }}
      >
        <legend class="unseen">A build file</legend>
        <label>
          Choose a file, or drop one anywhere on this page
          <input type="file" accept=".yaml,.yml,text/yaml" onChange={(e) => void takeFile(e.currentTarget.files?.[0])} />
        </label>
        <label>
          Or paste its text
          <textarea ref={box} rows={6} spellcheck={false} />
        </label>
        <button type="button" onClick={() => take(box.current?.value ?? "", "pasted.yaml")}>
          Open it
        </button>
      </fieldset>
      <p role="status">{said}</p>
      {findings.length > 0 ? (
        <ul class="findings">
          {findings.map((f) => (
            <li key={`${where(f.at)}${f.says}`}>
              <code>{where(f.at)}</code> {f.says} {f.hint ?? ""}
            </li>
          ))}
        </ul>
      ) : null}
    </details>
  );
}
