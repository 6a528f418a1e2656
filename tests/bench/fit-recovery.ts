import { fitPlayer } from '../../core/player/fit-player.ts';
import { parsePlayer } from '../../core/player/player-file.ts';
import { CALM, INVENTED_BAG, type InventedSession, inventPlayer, randomOf } from '../core/player/synthetic-player.ts';

/** Fits many invented players whose truth is known and prints bias, rms error and the coverage of 90 % intervals. */
const PLAYERS = Number(process.argv[2] ?? 200);
const THROWS = (process.argv[3] ?? '3,10,20,40').split(',').map(Number);
const SCATTERS = (process.argv[4] ?? '0.6,1,1.6').split(',').map(Number);
const NORMAL_90 = 1.6448536269514722;

const WINDY: readonly InventedSession[] = [
  { speed_mps: 0, from_deg: 0, bearing_deg: 90 },
  { speed_mps: 4, from_deg: 90, bearing_deg: 90 },
  { speed_mps: 3, from_deg: 180, bearing_deg: 90 },
];

type Tally = { count: number; bias: number; squares: number; covered: number };
const tally = (): Tally => ({ count: 0, bias: 0, squares: 0, covered: 0 });
const add = (t: Tally, error: number, sd: number) => {
  t.count++;
  t.bias += error;
  t.squares += error * error;
  if (Math.abs(error) <= NORMAL_90 * sd) t.covered++;
};
const shown = (t: Tally, scale: number) =>
  `bias ${((scale * t.bias) / t.count).toFixed(2)} rms ${(scale * Math.sqrt(t.squares / t.count)).toFixed(2)} covered ${((100 * t.covered) / t.count).toFixed(0)} %`;

console.log(`${PLAYERS} players x ${INVENTED_BAG.length} discs; errors are fit - truth`);
for (const [where, sessions] of [
  ['calm', CALM],
  ['windy', WINDY],
] as const) {
  for (const throws of THROWS) {
    for (const scatter of SCATTERS) {
      const speed = tally();
      const distance = tally();
      const finish = tally();
      const stability = tally();
      const spread = tally();
      const sideSpread = tally();
      const best = tally();
      const byDisc = new Map<string, Tally>();
      let ms = 0;
      for (let i = 0; i < PLAYERS; i++) {
        const { uniform } = randomOf(1000 + i);
        const { file, truths } = inventPlayer({
          seed: 5000 + i,
          arm_mps: 18 + 11 * uniform(),
          discs: INVENTED_BAG.map(disc => ({ ...disc, throws })),
          sessions,
          longScatter: scatter,
          sideScatter: scatter,
        });
        const parsed = parsePlayer(file);
        if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
        const started = performance.now();
        const fitted = fitPlayer(parsed.value);
        ms += performance.now() - started;
        for (const truth of truths) {
          const t = fitted.throws.find(f => f.discId === truth.discId)!;
          add(speed, Math.log(t.releaseSpeed_mps / truth.releaseSpeed_mps), t.releaseSpeedSd);
          add(distance, t.averageDay_m - truth.moments.along_m, t.averageDaySd_m);
          add(finish, t.finish_m + truth.moments.left_m, t.finishSd_m);
          add(stability, t.stabilityOffset - truth.stability, t.stabilityOffsetSd);
          add(spread, Math.log(t.distanceSd_m / truth.moments.alongSd_m), 1);
          add(sideSpread, Math.log(t.sideSd_m / truth.moments.leftSd_m), 1);
          if (!byDisc.has(t.discId)) byDisc.set(t.discId, tally());
          add(byDisc.get(t.discId)!, t.averageDay_m - truth.moments.along_m, t.averageDaySd_m);
        }
        void best;
      }
      console.log(`${where} ${throws} throws scatter x${scatter}: ${(ms / PLAYERS).toFixed(0)} ms a player
  speed %    ${shown(speed, 100)}
  distance m ${shown(distance, 1)}
  finish m   ${shown(finish, 1)}
  stability  ${shown(stability, 1)}
  distance SD % bias ${((100 * spread.bias) / spread.count).toFixed(1)} rms ${(100 * Math.sqrt(spread.squares / spread.count)).toFixed(1)}; side SD % bias ${((100 * sideSpread.bias) / sideSpread.count).toFixed(1)} rms ${(100 * Math.sqrt(sideSpread.squares / sideSpread.count)).toFixed(1)}`);
      if (process.argv[5] === 'discs') for (const [id, t] of byDisc) console.log(`    ${id}: ${shown(t, 1)}`);
    }
  }
}
