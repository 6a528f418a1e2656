/** A stored shot along one of the aims looked at, with what its middle comes to. */
export type Promising = { shot: number; aim: number; score: number };

export type PromisingOptions = Readonly<{
  shots: number;
  aims: number;
  /** Lower bounds on the scores, `[shot][aim]`; Infinity: leave out. */
  bounds: Float64Array;
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
const NO_AIM = -1;

/**
 * The pairs of shot and aim with the least score, looking in the order of a lower bound and stopping where no pair left can be
 * among the wanted: exact but for the bound's slack, however the obstacles lie.
 * @returns at most two aims a shot, least score first
 */
export function marchPromising(options: PromisingOptions): Promising[] {
  const { shots, aims, bounds, score, most, perGroup, groupOf, groups } = options;
  const order = ascending(bounds.subarray(0, shots * aims));
  const overall = new Ladder(most);
  const byGroup = Array.from({ length: groups }, () => new Ladder(perGroup));
  // the best aim of each shot, and the best of its aims that are not beside that one
  const best = new BestAims(shots);
  const second = new BestAims(shots);
  for (const i of order) {
    const shot = Math.floor(i / aims);
    const group = byGroup[groupOf(shot)];
    if (bounds[i] >= overall.worst && bounds[i] >= group.worst) continue;
    const aim = i % aims;
    const value = score(shot, aim);
    overall.add(value);
    group.add(value);
    keepTwo(best, second, shot, aim, value);
  }
  const kept = [...best.found(), ...second.found()];
  return kept.sort((a, b) => a.score - b.score || a.shot - b.shot || a.aim - b.aim);
}

/** An aim and its score for every shot; none at first. */
class BestAims {
  readonly score: Float64Array;
  readonly aim: Int32Array;
  constructor(shots: number) {
    this.score = new Float64Array(shots).fill(Number.POSITIVE_INFINITY);
    this.aim = new Int32Array(shots).fill(NO_AIM);
  }
  set(shot: number, aim: number, score: number): void {
    this.aim[shot] = aim;
    this.score[shot] = score;
  }
  found(): Promising[] {
    const pairs: Promising[] = [];
    this.aim.forEach((aim, shot) => {
      if (aim !== NO_AIM) pairs.push({ shot, aim, score: this.score[shot] });
    });
    return pairs;
  }
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

function keepTwo(best: BestAims, second: BestAims, shot: number, aim: number, score: number): void {
  const bestAim = best.aim[shot];
  const near = bestAim !== NO_AIM && Math.abs(bestAim - aim) <= APART;
  if (score < best.score[shot] || bestAim === NO_AIM) {
    if (bestAim !== NO_AIM && !near) second.set(shot, bestAim, best.score[shot]);
    best.set(shot, aim, score);
  } else if (!near && score < second.score[shot]) second.set(shot, aim, score);
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
