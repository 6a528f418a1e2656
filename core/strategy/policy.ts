import { fillChances } from './fill-from-lies.ts';
import { CHOICE, type Ends, RESULT } from './march.ts';
import { puttFrom, puttingCell, puttingDistribution } from './putting-value.ts';
import {
  distanceToBasket,
  gridAt,
  isPutt,
  LONGEST_PUTT_M,
  MOST_THROWS,
  outsideThrows,
  type ValueField,
  valueAt,
} from './value-field.ts';

/**
 * Numbers an outcome: x, y, weight, penalty, and CHOICE bits: from where else than from x, y the thrower may play on. x is NaN when
 * there is no such place, Infinity when the throw is holed.
 */
const STRIDE = 5;
const HOLED = Number.POSITIVE_INFINITY;
const MOST_REPLAY = 0.9;
const NO_SHOT = -1;
const PUTT = -2;
const BETWEEN = -3;
/** Share of a shot that may be stopped or penalised for it to count as clean. */
const CLEAN_SHARE = 0.1;

/**
 * The chosen shot of every lie of a field with where it ends: evaluated over and over without flying again, and the source of the
 * score distribution.
 */
export type Policy = Readonly<{
  /** Opens a node's list; `add` its paths, then `end` returns its value. */
  begin(node: number, shot: number): void;
  add(ends: Ends, weight: number, dropX: number, dropY: number): void;
  end(): number;
  /** The node putts. */
  putt(node: number): void;
  /** The node putts if that takes fewer throws than the shot it has. */
  considerPutt(node: number): void;
  /** The node's value and chances are the mean of these nodes'. */
  interpolate(node: number, from: readonly number[]): void;
  /** Where a chance to lie at the node goes with the node's throw; nothing of it goes on from a putt or a throw played again. */
  follow(node: number, chance: number, to: (x_m: number, y_m: number, chance: number) => void): void;
  /** True when the node's chosen shot meets next to nothing: no hits and no penalties to speak of. */
  isClean(node: number): boolean;
  /** How far the node's value is from the one it was chosen with. */
  moved(node: number): number;
  /** Values all nodes again by their stored ends. @returns the largest change */
  sweep(): number;
  /** Chance to hole out in at most n throws, n = 0…most, as grids like the field's. */
  distribution(most: number): Float64Array[];
}>;

export function createPolicy(field: ValueField): Policy {
  const lists: (Float64Array | undefined)[] = new Array(field.value.length);
  const kind = new Int32Array(field.value.length).fill(NO_SHOT);
  const between: (readonly number[] | undefined)[] = new Array(field.value.length);
  const trouble = new Float64Array(field.value.length);
  const chosenAt = new Float64Array(field.value.length);
  let buffer = new Float64Array(STRIDE * 256);
  /** Weight and value of ends whose thrower may throw from the own lie again. */
  let optional = new Float64Array(2 * 64);
  let count = 0;
  let current = 0;
  /** The drop zone for out-of-bounds: one a hole. */
  let dropZoneX = Number.NaN;
  let dropZoneY = Number.NaN;

  /**
   * Value of a lie by its throw's ends. Throws played again from the lie are solved in closed form; where that is a choice, it is
   * taken for the ends that are dearer than the lie itself, found by going on until no end changes sides (policy iteration).
   */
  function listValue(list: Float64Array): number {
    let sum = 1;
    let replay = 0;
    let free = 0;
    for (let at = 0; at < list.length; at += STRIDE) {
      const weight = list[at + 2];
      sum += weight * list[at + 3];
      if (list[at] === HOLED) continue;
      const value = nextValue(list, at);
      if (Number.isNaN(value)) {
        replay += weight;
        continue;
      }
      sum += weight * value;
      if ((list[at + 4] & CHOICE.previousLie) === 0) continue;
      if (2 * free === optional.length) optional = doubled(optional);
      optional[2 * free] = weight;
      optional[2 * free + 1] = value;
      free++;
    }
    let best = closedForm(sum, replay);
    for (let pass = 0; pass < free; pass++) {
      let own = sum;
      let back = replay;
      for (let i = 0; i < free; i++) {
        if (optional[2 * i + 1] <= best) continue;
        own -= optional[2 * i] * optional[2 * i + 1];
        back += optional[2 * i];
      }
      const next = closedForm(own, back);
      if (!(next < best - 1e-9)) break;
      best = next;
    }
    return best;
  }

  /** True when this end of the node's throw is played from the node again. */
  function isAgain(list: Float64Array, at: number, node: number): boolean {
    const value = nextValue(list, at);
    return Number.isNaN(value) || ((list[at + 4] & CHOICE.previousLie) !== 0 && value > field.value[node]);
  }

  /** Value of the lie that an end leaves; NaN when there is nothing but the own lie. */
  function nextValue(list: Float64Array, at: number): number {
    if (takesDrop(list, at)) return valueAt(field, dropZoneX, dropZoneY);
    return Number.isNaN(list[at]) ? Number.NaN : valueAt(field, list[at], list[at + 1]);
  }

  /** True when this end is played from the drop zone, by the values as they are now. */
  function takesDrop(list: Float64Array, at: number): boolean {
    if ((list[at + 4] & CHOICE.dropZone) === 0) return false;
    if (Number.isNaN(list[at])) return true;
    return valueAt(field, dropZoneX, dropZoneY) < valueAt(field, list[at], list[at + 1]);
  }

  function puttValue(node: number): number {
    const [x, y] = position(field, node);
    const putt = puttFrom(field.putting, distanceToBasket(field, x, y));
    // a putt that is stopped leaves about the same putt again
    const open = Math.max(0.05, field.openPutt[node]);
    return Math.min(MOST_THROWS, (open * putt + (1 - open)) / open);
  }

  return {
    begin(node, shot) {
      current = node;
      kind[node] = shot;
      trouble[node] = 0;
      count = 0;
    },
    add(ends, weight, dropX, dropY) {
      if ((count + ends.count) * STRIDE > buffer.length) {
        const larger = new Float64Array(buffer.length * 2 + ends.count * STRIDE);
        larger.set(buffer);
        buffer = larger;
      }
      if (!Number.isNaN(dropX)) {
        dropZoneX = dropX;
        dropZoneY = dropY;
      }
      const choices = CHOICE.previousLie | (Number.isNaN(dropX) ? 0 : CHOICE.dropZone);
      for (let i = 0; i < ends.count; i++) {
        const isOut = ends.kind[i] === RESULT.outOfBounds;
        const isHoled = ends.kind[i] === RESULT.holed;
        if (ends.kind[i] !== RESULT.rest && !isHoled) trouble[current] += ends.weight[i] * weight;
        const at = count * STRIDE;
        buffer[at] = isHoled ? HOLED : ends.x[i];
        buffer[at + 1] = ends.y[i];
        buffer[at + 2] = ends.weight[i] * weight;
        buffer[at + 3] = ends.penalty[i];
        buffer[at + 4] = isOut ? ends.choices[i] & choices : 0;
        count++;
      }
    },
    end() {
      const list = buffer.slice(0, count * STRIDE);
      lists[current] = list;
      chosenAt[current] = listValue(list);
      return chosenAt[current];
    },
    putt(node) {
      kind[node] = PUTT;
      field.value[node] = puttValue(node);
    },
    considerPutt(node) {
      const [x, y] = position(field, node);
      if (distanceToBasket(field, x, y) >= LONGEST_PUTT_M) return;
      const putt = puttValue(node);
      if (putt >= field.value[node]) return;
      field.value[node] = putt;
      kind[node] = PUTT;
    },
    interpolate(node, from) {
      kind[node] = BETWEEN;
      between[node] = from;
      field.value[node] = meanOf(field.value, from);
    },
    follow(node, chance, to) {
      const from = between[node];
      if (kind[node] === BETWEEN && from) {
        for (const parent of from) this.follow(parent, chance / from.length, to);
        return;
      }
      const list = lists[node];
      if (kind[node] < 0 || !list) return;
      for (let at = 0; at < list.length; at += STRIDE) {
        if (list[at] === HOLED || isAgain(list, at, node)) continue;
        const drops = takesDrop(list, at);
        to(drops ? dropZoneX : list[at], drops ? dropZoneY : list[at + 1], chance * list[at + 2]);
      }
    },
    isClean: node => kind[node] >= 0 && trouble[node] < CLEAN_SHARE,
    moved: node => Math.abs(field.value[node] - chosenAt[node]),
    sweep() {
      let change = 0;
      for (let node = 0; node < kind.length; node++) {
        if (kind[node] === NO_SHOT) continue;
        const list = lists[node];
        const from = between[node];
        const value =
          kind[node] === BETWEEN && from
            ? meanOf(field.value, from)
            : kind[node] === PUTT || !list
              ? puttValue(node)
              : listValue(list);
        change = Math.max(change, Math.abs(value - field.value[node]));
        field.value[node] = value;
      }
      return change;
    },
    distribution(most) {
      const putts = puttingDistribution(field.putting, most);
      const layers: Float64Array[] = [new Float64Array(field.value.length)];
      for (let n = 1; n <= most; n++) {
        const layer = new Float64Array(field.value.length);
        for (let node = 0; node < layer.length; node++) {
          if (kind[node] === PUTT) {
            const [x, y] = position(field, node);
            const cell = puttingCell(field.putting, distanceToBasket(field, x, y));
            const open = field.openPutt[node];
            layer[node] = open * putts[n - 1][cell] + (1 - open) * layers[n - 1][node];
            continue;
          }
          const list = lists[node];
          if (kind[node] === BETWEEN || !list) continue;
          let chance = 0;
          for (let at = 0; at < list.length; at += STRIDE) {
            const left = n - 1 - list[at + 3];
            if (list[at] === HOLED) chance += list[at + 2];
            if (left <= 0 || list[at] === HOLED) continue;
            chance +=
              list[at + 2] *
              (isAgain(list, at, node)
                ? layers[left][node]
                : takesDrop(list, at)
                  ? holedWithin(field, layers, putts, left, dropZoneX, dropZoneY)
                  : holedWithin(field, layers, putts, left, list[at], list[at + 1]));
          }
          layer[node] = chance;
        }
        for (let node = 0; node < layer.length; node++) {
          const from = between[node];
          if (kind[node] === BETWEEN && from) layer[node] = meanOf(layer, from);
        }
        fillChances(field, layer, layers[n - 1]);
        layers.push(layer);
      }
      return layers;
    },
  };
}

/** Chance to hole out within n throws from a local point, by the layers of `Policy.distribution`. */
export function holedWithin(
  field: ValueField,
  layers: readonly Float64Array[],
  putts: readonly Float64Array[],
  n: number,
  x_m: number,
  y_m: number,
): number {
  if (n <= 0) return 0;
  const d = distanceToBasket(field, x_m, y_m);
  if (isPutt(field, x_m, y_m, d) && puttFrom(field.putting, d) <= gridAt(field, field.value, x_m, y_m) + 1e-9) {
    return putts[n - 1][puttingCell(field.putting, d)];
  }
  // off the mapped ground some throws, or a share of one, go on coming back
  const back = outsideThrows(field, x_m, y_m);
  const whole = Math.floor(back);
  const sooner = gridAt(field, layers[Math.max(0, n - whole)], x_m, y_m);
  const later = gridAt(field, layers[Math.max(0, n - whole - 1)], x_m, y_m);
  return sooner + (back - whole) * (later - sooner);
}

/** Value of a lie that a throw comes back to with a chance. */
function closedForm(sum: number, replay: number): number {
  return replay > MOST_REPLAY ? MOST_THROWS : Math.min(MOST_THROWS, sum / (1 - replay));
}

function doubled(numbers: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(2 * numbers.length);
  larger.set(numbers);
  return larger;
}

function meanOf(values: Float64Array, nodes: readonly number[]): number {
  let sum = 0;
  for (const node of nodes) sum += values[node];
  return sum / nodes.length;
}

function position(field: ValueField, node: number): [number, number] {
  return [
    field.x0_m + (node % field.columns) * field.cell_m,
    field.y0_m + Math.floor(node / field.columns) * field.cell_m,
  ];
}
