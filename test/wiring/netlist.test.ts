// Levels by connectivity, by hand on small circuits and against the path table on random ones.
import { describe, expect, it } from "vitest";
import { levelOf, type Netlist, solve, together } from "../../src/wiring/simulate/netlist.js";
import { Random } from "./support/random.js";
import { levelsByPaths, pathTable } from "./support/truth-table.js";

const nodes = (count: number) => Array.from({ length: count }, (_, i) => `n${i}`);

describe("a line with a pull-up and a contact to ground", () => {
  const net: Netlist = { nodes: nodes(3), joins: [], pullUps: [2], strong: [] };
  it("is high while the contact is open and low while it is closed", () => {
    expect(levelOf(solve(net, []), 2)).toBe("high");
    expect(levelOf(solve(net, [[0, 2]]), 2)).toBe("low");
  });
  it("floats without its pull-up", () => {
    expect(levelOf(solve({ ...net, pullUps: [] }, []), 2)).toBe("floating");
  });
  it("shorts the supply when the pin still sits in a socket contact tied high", () => {
    const left = { ...net, strong: [{ node: 2, level: "high" as const }] };
    expect(solve(left, []).short).toBe(false);
    expect(solve(left, [[0, 2]]).short).toBe(true);
    expect(levelOf(solve(left, [[0, 2]]), 2)).toBe("short");
  });
});

it("joins supply and ground through a make-before-break contact as a short", () => {
  const net: Netlist = { nodes: nodes(3), joins: [], pullUps: [], strong: [] };
  expect(
    solve(net, [
      [0, 2],
      [1, 2],
    ]).short,
  ).toBe(true);
});

it("agrees with the path table on 1500 random circuits, over every state of their contacts", () => {
  const random = new Random(7);
  const seen = { low: 0, high: 0, floating: 0, short: 0 };
  for (let n = 0; n < 1500; n += 1) {
    const count = 4 + random.whole(7);
    const edge = (): [number, number] => [random.whole(count), random.whole(count)];
    const joins = Array.from({ length: random.whole(5) }, edge);
    const contacts = Array.from({ length: random.whole(5) }, edge);
    const pullUps = Array.from({ length: random.whole(4) }, () => 2 + random.whole(count - 2));
    const strong = Array.from({ length: random.whole(3) }, () => ({
      node: 2 + random.whole(count - 2),
      level: random.pick(["high", "low", "driven"] as const),
    }));
    for (let mask = 0; mask < 2 ** contacts.length; mask += 1) {
      const closed = contacts.filter((_, i) => (mask >> i) & 1);
      const solved = solve({ nodes: nodes(count), joins, pullUps, strong }, closed);
      const plain = { nodes: count, joins: [...joins, ...closed], pullUps, strong };
      const twin = levelsByPaths(plain);
      const paths = pathTable(plain);
      if (solved.short !== twin.short) throw new Error(`short of circuit ${n}`);
      for (let a = 0; a < count; a += 1) {
        if (levelOf(solved, a) !== twin.levels[a]) throw new Error(`level of node ${a} of circuit ${n}`);
        seen[twin.levels[a]!] += 1;
        for (let b = 0; b < a; b += 1) if (together(solved, a, b) !== paths[a]![b]) throw new Error(`nodes ${a} and ${b} of circuit ${n}`);
      }
    }
  }
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(1000);
});
