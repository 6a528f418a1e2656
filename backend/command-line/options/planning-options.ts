import { type Command, Option } from 'commander';
import type { Limits } from '../../../core/strategy/shots.ts';
import type { AttitudeName } from '../../planning/plan-round.ts';
import { AIR_OPTION_OF, type AirOptions, addAirOptions } from './air-options.ts';
import { discClasses } from './limit-options.ts';
import { wholeNumber } from './reading.ts';

/** What every verb that plans a round is told. */
export type PlanningOptions = AirOptions &
  Readonly<{
    player: string;
    only?: Limits['classes'];
    hand?: 'backhand' | 'forehand';
    holes?: string;
    attitude: AttitudeName;
    target?: number;
    bag?: number;
    seed: number;
  }>;

export const PLANNING_OPTION_OF: Readonly<Record<string, string>> = {
  ...AIR_OPTION_OF,
  holes: '--holes',
  target: '--target',
  bag: '--bag',
  limits: '--only/--hand',
};

export function addPlanningOptions(command: Command): Command {
  command
    .argument('<course>', 'course file (GeoJSON)')
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting');
  return addAirOptions(command)
    .addOption(
      new Option(
        '--only <classes>',
        'these discs only: putters,midranges,fairways,controls,distances,drivers',
      ).argParser(discClasses),
    )
    .addOption(new Option('--hand <hand>', 'throw from this hand only').choices(['backhand', 'forehand']))
    .addOption(
      new Option(
        '--attitude <attitude>',
        'even: fewest expected throws; guard: against bad scores; push: best chance at --target',
      )
        .choices(['even', 'guard', 'push'])
        .default('even'),
    )
    .addOption(
      new Option('--target <throws>', 'with --attitude push: finish these holes in so many').argParser(wholeNumber),
    )
    .addOption(
      new Option('--bag <discs>', 'carry the best so many discs only, putting putters included').argParser(wholeNumber),
    )
    .option('--holes <holes>', 'these holes only: 1,3-5 or all')
    .addOption(
      new Option('--seed <number>', 'of the simulated throws; same seed, same plan').argParser(wholeNumber).default(1),
    );
}
