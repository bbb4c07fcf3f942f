// Which machine: the board; and what is known of this very one, its revision with how to tell and its memory.

import { useApp } from "./app-context.js";
import { Part, Pick } from "./bits.js";
import { ChoiceField } from "./ChoiceField.js";

export function Machine() {
  const { catalogue, build, store } = useApp();
  const pickBoard = (id: string) => store.make({ do: "board", board: id });
  return (
    <Part id="machine" title="Your machine">
      {catalogue.boards.length <= 6 ? (
        <fieldset class="choice">
          <legend>Board</legend>
          {catalogue.boards.map((b) => (
            <div class="pickable" key={b.id}>
              <Pick type="radio" name="board" checked={b.id === build.board} describedBy={`board-${b.id}`} onPick={() => pickBoard(b.id)}>
                {b.name}
              </Pick>
              <p class="more how" id={`board-${b.id}`}>
                {b.summary}
              </p>
            </div>
          ))}
        </fieldset>
      ) : (
        <label>
          Board
          <select value={build.board} onChange={(e) => pickBoard(e.currentTarget.value)}>
            <option value="">choose</option>
            {catalogue.boards.map((b) => (
              <option key={b.id} value={b.id}>
                {b.name}
              </option>
            ))}
          </select>
        </label>
      )}
    </Part>
  );
}

/** What is known of this very machine: it narrows the answer, and can be left open. */
export function Known() {
  const { catalogue, build, answer } = useApp();
  const board = catalogue.boards.find((b) => b.id === build.board);
  const revision = answer?.possible.find((c) => c.id === "revision");
  const memory = answer?.possible.find((c) => c.id === "memory");
  if (!board) return null;
  return (
    <Part id="known" title="What you know of it">
      {revision ? (
        <ChoiceField
          choice={revision}
          legend="Revision: the letter on the board"
          several="Tick the one it is. Tick several when you cannot tell between them, none when you cannot tell at all."
          open="I cannot tell"
          how={Object.fromEntries(board.revisions.map((r) => [r.id, r.tell]))}
        />
      ) : null}
      {memory ? <ChoiceField choice={memory} legend="Memory fitted" open="I cannot tell, or any will do" /> : null}
      {build.stands ? <Stands /> : build.cards.length > 0 ? <TakeAsStanding /> : null}
    </Part>
  );
}

function TakeAsStanding() {
  const { store } = useApp();
  return (
    <div class="stands">
      <button type="button" onClick={() => store.make({ do: "stands" })}>
        This is how my machine stands now
      </button>
      <p class="more">
        Say so once what you chose below is what is really in it. All choices open again, and every change from it is counted and told.
      </p>
    </div>
  );
}

function Stands() {
  const { build, catalogue } = useApp();
  const { stands } = build;
  const cards = (stands?.cards ?? []).map((c) => `${catalogue.names[`card/${c.card}`] ?? c.card}${c.slot ? ` in ${c.slot}` : ""}`);
  const bare = [stands?.revision ? `revision ${stands.revision}` : "", stands?.firmware ?? ""].filter(Boolean);
  return <p class="stands">As it stands: {[...bare, ...cards].join(", ") || "nothing written down"}. Changes are counted from there.</p>;
}
