// Permanents: in how many ways variables can take values of their domains, no two the same one. That is the permanent of a matrix of zeros
// and ones; when nothing but all-different is left of a component, it is worked out here rather than value by value.
//
// The variables are gone through one after another. Values in the domains of the same variables are interchangeable, so all that matters of the
// values taken so far is how many of each kind, and of a kind that no later variable has not even that. A state is a number whose digits
// are these; each state keeps the number of ways into it. (Permanents: Ryser, "Combinatorial Mathematics", 1963. No quick way is to be
// expected in general: Valiant, "The Complexity of Computing the Permanent", 1979.)

/** A number of ways is `high * unit + low`, exact far beyond what one double could hold. */
const unit = 2 ** 40;
const mostHigh = 2 ** 42;
const mostTimes = 2 ** 10;
const mostStates = 2 ** 15;

/** The variables by the kinds of values they have. */
interface Matrix {
  /** How many values there are of each kind. */
  readonly rooms: readonly number[];
  /** For each variable its kinds, and how many values it has that may be shared. */
  readonly kinds: readonly (readonly number[])[];
  readonly free: readonly number[];
}

interface Side {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export class Permanents {
  private readonly sides = [0, 1].map((): Side => ({ low: new Float64Array(mostStates), high: new Float64Array(mostStates) }));

  /**
   * `domains[i]` has the values of variable i as a bitset; those in `shared` may be taken any number of times.
   * Undefined when there are too many states or ways: then a variable is to be branched over first.
   */
  count(domains: readonly Int32Array[], shared: Int32Array): bigint | undefined {
    const matrix = matrixOf(domains, shared);
    const ways = this.ways(matrix);
    if (ways === undefined) for (const { low, high } of this.sides) for (const half of [low, high]) half.fill(0);
    return ways;
  }

  private ways({ rooms, kinds, free }: Matrix): bigint | undefined {
    if (Math.max(...rooms, ...free) > mostTimes) return undefined;
    const order = orderOf(rooms, kinds);
    const last = new Int32Array(rooms.length);
    for (const [position, v] of order.entries()) for (const kind of kinds[v]!) last[kind] = position;
    let [side, next] = this.sides as [Side, Side];
    let states = [0];
    side.low[0] = 1;
    /** The kinds in use, which variables on both sides of here have, and what one value taken adds to the state. */
    let alive: readonly number[] = [];
    let digit = new Int32Array(rooms.length);
    const taken = new Int32Array(rooms.length);
    for (const [position, v] of order.entries()) {
      const later = alive.filter((kind) => last[kind]! > position);
      for (const kind of kinds[v]!) if (digit[kind] === 0 && last[kind]! > position) later.push(kind);
      const digitLater = new Int32Array(rooms.length);
      let size = 1;
      for (const kind of later) {
        digitLater[kind] = size;
        size *= rooms[kind]! + 1;
      }
      if (size > mostStates) return undefined;
      const after: number[] = [];
      const { low: lowNow, high: highNow } = side;
      const { low: lowNext, high: highNext } = next;
      let most = 0;
      for (let at = 0; at < states.length; at++) {
        const state = states[at]!;
        const low = lowNow[state]!;
        const high = highNow[state]!;
        lowNow[state] = 0;
        highNow[state] = 0;
        let kept = 0;
        for (let i = 0; i < alive.length; i++) {
          const kind = alive[i]!;
          taken[kind] = ((state / digit[kind]!) | 0) % (rooms[kind]! + 1);
          kept += taken[kind]! * digitLater[kind]!;
        }
        const own = kinds[v]!;
        for (let i = free[v]! > 0 ? -1 : 0; i < own.length; i++) {
          const kind = own[i]!;
          const times = i < 0 ? free[v]! : rooms[kind]! - taken[kind]!;
          if (times === 0) continue;
          const to = i < 0 ? kept : kept + digitLater[kind]!;
          if (lowNext[to] === 0 && highNext[to] === 0) after.push(to);
          const sum = lowNext[to]! + low * times;
          const carry = sum < unit ? 0 : Math.floor(sum / unit);
          lowNext[to] = sum - carry * unit;
          if (high + carry === 0) continue;
          highNext[to]! += high * times + carry;
          if (highNext[to]! > most) most = highNext[to]!;
        }
      }
      if (most > mostHigh) return undefined;
      states = after;
      alive = later;
      digit = digitLater;
      [side, next] = [next, side];
    }
    const sum = BigInt(side.high[0]!) * BigInt(unit) + BigInt(side.low[0]!);
    side.low[0] = 0;
    side.high[0] = 0;
    return sum;
  }
}

/** Values that the same variables have are of one kind: the values are parted by one variable after another. */
function matrixOf(domains: readonly Int32Array[], shared: Int32Array): Matrix {
  const width = Math.max(...domains.map((domain) => domain.length));
  const kindOf = new Int32Array(width * 32);
  let count = 1;
  for (const domain of domains) {
    const parted = new Map<number, number>();
    forEach(domain, (value) => {
      const kind = kindOf[value]!;
      if (!parted.has(kind)) parted.set(kind, count++);
      kindOf[value] = parted.get(kind)!;
    });
  }
  const names = new Map<number, number>();
  const rooms: number[] = [];
  const free: number[] = [];
  const counted = new Set<number>();
  const kinds = domains.map((domain) => {
    const of = new Set<number>();
    let open = 0;
    forEach(domain, (value) => {
      if (((shared[value >>> 5]! >>> (value & 31)) & 1) === 1) {
        open++;
        return;
      }
      const kind = kindOf[value]!;
      if (!names.has(kind)) names.set(kind, rooms.push(0) - 1);
      const name = names.get(kind)!;
      if (!counted.has(value)) rooms[name]!++;
      counted.add(value);
      of.add(name);
    });
    free.push(open);
    return [...of];
  });
  return { rooms, kinds, free };
}

function forEach(domain: Int32Array, visit: (value: number) => void): void {
  for (let w = 0; w < domain.length; w++) {
    for (let word = domain[w]!; word !== 0; word &= word - 1) visit((w << 5) + 31 - Math.clz32(word & -word));
  }
}

/** The order in which the fewest kinds are in use at once: always the variable next that adds least. */
function orderOf(rooms: readonly number[], kinds: readonly (readonly number[])[]): number[] {
  const waiting = rooms.map((_, kind) => kinds.filter((of) => of.includes(kind)).length);
  const begun = new Uint8Array(rooms.length);
  const left = kinds.map((_, v) => v);
  const order: number[] = [];
  while (left.length > 0) {
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (const [i, v] of left.entries()) {
      let adds = 0;
      for (const kind of kinds[v]!) {
        const size = Math.log2(rooms[kind]! + 1);
        if (begun[kind] === 0 && waiting[kind]! > 1) adds += size;
        else if (begun[kind] === 1 && waiting[kind] === 1) adds -= size;
      }
      if (adds < least) [best, least] = [i, adds];
    }
    const [v] = left.splice(best, 1) as [number];
    order.push(v);
    for (const kind of kinds[v]!) {
      begun[kind] = 1;
      waiting[kind]!--;
    }
  }
  return order;
}
