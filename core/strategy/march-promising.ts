/** A stored shot along one of the aims looked at, with what its middle comes to. */
export type Promising = { shot: number; aim: number; score: number };

export type PromisingOptions = Readonly<{
  shots: number;
  aims: number;
  /** A lower bound on the score of shot and aim, cheap; Infinity: leave out. */
  bound: (shot: number, aim: number) => number;
  /** The score itself, dear. */
  score: (shot: number, aim: number) => number;
  /** How many pairs are wanted in all, and at least of each group of shots. */
  most: number;
  perGroup: number;
  groupOf: (shot: number) => number;
  groups: number;
}>;

const BUCKETS = 1024;
const PER_THROW = 64;
/** Aims of one shot closer than this many steps say the same thing. */
const APART = 2;

/**
 * The pairs of shot and aim with the least score, looking in the order of a lower bound and stopping where no pair left can be
 * among the wanted: exact but for the bound's slack, however the obstacles lie.
 * @returns at most two aims a shot, least score first
 */
export function marchPromising(options: PromisingOptions): Promising[] {
  const { shots, aims, bound, score, most, perGroup, groupOf, groups } = options;
  const count = shots * aims;
  const bounds = new Float64Array(count);
  for (let shot = 0, i = 0; shot < shots; shot++)
    for (let aim = 0; aim < aims; aim++, i++) bounds[i] = bound(shot, aim);
  const order = ascending(bounds);
  const overall = new Ladder(most);
  const byGroup = Array.from({ length: groups }, () => new Ladder(perGroup));
  const first = new Array<Promising | undefined>(shots);
  const second = new Array<Promising | undefined>(shots);
  for (const i of order) {
    const shot = Math.floor(i / aims);
    const group = byGroup[groupOf(shot)];
    if (bounds[i] >= overall.worst && bounds[i] >= group.worst) continue;
    const aim = i % aims;
    const pair: Promising = { shot, aim, score: score(shot, aim) };
    overall.add(pair.score);
    group.add(pair.score);
    keepTwo(first, second, pair);
  }
  const kept: Promising[] = [];
  for (let shot = 0; shot < shots; shot++) {
    const [a, b] = [first[shot], second[shot]];
    if (a) kept.push(a);
    if (b) kept.push(b);
  }
  return kept.sort((a, b) => a.score - b.score || a.shot - b.shot || a.aim - b.aim);
}

/** The least few scores seen; `worst` is what a new one must beat. */
class Ladder {
  private readonly scores: number[] = [];
  private readonly size: number;
  worst: number;
  constructor(size: number) {
    this.size = size;
    this.worst = size > 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  }
  add(score: number): void {
    if (score >= this.worst) return;
    let at = this.scores.length;
    while (at > 0 && this.scores[at - 1] > score) at--;
    this.scores.splice(at, 0, score);
    if (this.scores.length > this.size) this.scores.pop();
    if (this.scores.length === this.size) this.worst = this.scores[this.size - 1];
  }
}

function keepTwo(first: (Promising | undefined)[], second: (Promising | undefined)[], pair: Promising): void {
  const best = first[pair.shot];
  if (!best) {
    first[pair.shot] = pair;
    return;
  }
  const near = Math.abs(best.aim - pair.aim) <= APART;
  if (pair.score < best.score) {
    first[pair.shot] = pair;
    if (!near) second[pair.shot] = best;
    return;
  }
  const other = second[pair.shot];
  if (!near && (!other || pair.score < other.score)) second[pair.shot] = pair;
}

/** Indices of the finite values, least first to within 1/64; a counting sort, stable. */
function ascending(values: Float64Array): Uint32Array {
  const bucketOf = (value: number) => Math.min(BUCKETS - 1, Math.max(0, (value * PER_THROW) | 0));
  const starts = new Uint32Array(BUCKETS + 1);
  let finite = 0;
  for (const value of values) {
    if (value === Number.POSITIVE_INFINITY) continue;
    starts[bucketOf(value) + 1]++;
    finite++;
  }
  for (let i = 1; i <= BUCKETS; i++) starts[i] += starts[i - 1];
  const order = new Uint32Array(finite);
  for (let i = 0; i < values.length; i++) {
    if (values[i] !== Number.POSITIVE_INFINITY) order[starts[bucketOf(values[i])]++] = i;
  }
  return order;
}
