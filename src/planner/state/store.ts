// The page's memory: the moves made, kept in the browser's own history so that "back" takes the last one away and a reload loses none.
// The address always holds the build.

import { defaultMode } from "../../catalogue/index.js";
import { addressOf, buildFrom, withCard } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import { blank, buildOf, type Move, notAtHand, type State, unpinned, withMove, without } from "./moves.js";

export interface Store {
  readonly state: State;
  readonly build: Build;
  make(move: Move): void;
  takeBack(at: number): void;
  unpin(id: string): void;
  /** Something is not at hand after all. */
  give(what: "firmware" | "cards" | "parts", id: string): void;
  /** Starts anew from a build. */
  open(build: Build): void;
  rename(id: string, name: string): void;
  onChange(listener: () => void): void;
}

/** What a page may be opened with: an address, or a question after "?" from another page of the site. */
export type Opened = { readonly kind: "build"; readonly build: Build } | { readonly kind: "named"; readonly id: string };

export function openedWith(place: Pick<Location, "hash" | "search">, prefix = "#"): Opened | undefined {
  const shared = place.hash.startsWith(prefix) ? buildFrom(place.hash.slice(prefix.length)) : undefined;
  if (shared) return { kind: "build", build: shared };
  const asked = new URLSearchParams(prefix === "#" ? place.search : place.hash.startsWith(prefix) ? place.hash.slice(prefix.length) : "");
  const id = asked.get("build");
  if (id) return { kind: "named", id };
  const cards = asked.getAll("card");
  const board = asked.get("board");
  if (!board && cards.length === 0) return undefined;
  const revision = asked.get("revision");
  const firmware = asked.get("firmware");
  const fitted = cards.reduce((build, card) => withCard(build, card), blank);
  const build: Build = {
    ...fitted,
    board: board ?? "",
    ...(revision ? { revision } : {}),
    ...(firmware ? { modes: [{ ...defaultMode, firmware }] } : {}),
  };
  return { kind: "build", build };
}

function isState(kept: unknown): kept is { readonly planner: State } {
  return typeof kept === "object" && kept !== null && "planner" in kept;
}

/** `prefix` stands before the build in the address: "#", or more where the address also says which page is shown. */
export function makeStore(prefix = "#", until?: AbortSignal): Store {
  const opened = openedWith(location, prefix);
  const fresh = (): State => ({ base: opened?.kind === "build" ? opened.build : blank, moves: [] });
  let state = isState(history.state) ? history.state.planner : fresh();
  const listeners: (() => void)[] = [];
  const tell = () => {
    for (const listener of listeners) listener();
  };
  const addressed = () => `${prefix}${addressOf(buildOf(state))}`;
  const go = (next: State) => {
    state = next;
    history.pushState({ planner: state }, "", addressed());
    tell();
  };
  const back = (event: PopStateEvent): void => {
    if (!location.hash.startsWith(prefix) && prefix !== "#") return;
    const shared = buildFrom(location.hash.slice(prefix.length));
    state = isState(event.state) ? event.state.planner : { base: shared ?? fresh().base, moves: [] };
    tell();
  };
  addEventListener("popstate", back, until ? { signal: until } : {});
  return {
    get state() {
      return state;
    },
    get build() {
      return buildOf(state);
    },
    make: (move) => go(withMove(state, move)),
    takeBack: (at) => go(without(state, at)),
    unpin: (id) => go(unpinned(state, id)),
    give: (what, id) => go(notAtHand(state, what, id)),
    open: (build) => go({ base: build, moves: [] }),
    rename(id, name) {
      state = { ...state, base: { ...state.base, id, name } };
      history.replaceState({ planner: state }, "", addressed());
      tell();
    },
    onChange: (listener) => {
      listeners.push(listener);
    },
  };
}
