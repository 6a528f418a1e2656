import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** The library that is written to: made before the first round. */
export type Target = Readonly<{ courseId: string; playerId: string; refs: readonly string[] }>;
/** One write: what it puts where, and the call that does it. */
export type Write = Readonly<{ slot: string; value: string; method: string; input: object }>;

const KINDS = ['note', 'noteAway', 'name', 'player', 'pin', 'settings'] as const;
const SHOT = { discId: 'mid', hand: 'backhand', shape: 'flat', height: 'low', hyzer_deg: 0, launch_deg: 8, power: 1 };

/** The k-th write of a seed; the same in the process that is killed and in the one that looks. */
export function randomWrite(seed: number, k: number, { courseId, playerId, refs }: Target): Write {
  const rng = xoroshiro128plus((seed * 1_000_003 + k) | 0);
  for (let i = 0; i < 20; i++) rng.next();
  const pick = <T>(from: readonly T[]): T => from[(rng.next() >>> 0) % from.length]!;
  const kind = pick(KINDS);
  const ref = pick(refs);
  const value = `${kind} ${k} ${'x'.repeat((rng.next() >>> 0) % 900)}`.trim();
  switch (kind) {
    case 'note':
      return { slot: `note ${ref}`, value, method: 'setNote', input: { courseId, ref, text: value } };
    case 'noteAway':
      return { slot: `note ${ref}`, value: '', method: 'setNote', input: { courseId, ref, text: '' } };
    case 'name': {
      const name = `Loop ${k}`;
      return { slot: 'name', value: name, method: 'renameCourse', input: { courseId, name } };
    }
    case 'player': {
      const name = `Thrower ${k}`;
      return { slot: 'player', value: name, method: 'renamePlayer', input: { playerId, name } };
    }
    case 'pin': {
      const title = value.slice(0, 200);
      const input = { courseId, playerId, ref, title, shot: { ...SHOT, aimBearing_deg: k % 360 } };
      return { slot: `pin ${ref}`, value: title, method: 'pinShot', input };
    }
    case 'settings': {
      const day = { wind: { speed_mps: (k % 200) / 10, from_deg: k % 360 } };
      return { slot: 'day', value: JSON.stringify(day), method: 'setSettings', input: { change: { day } } };
    }
    default:
      return kind satisfies never;
  }
}
