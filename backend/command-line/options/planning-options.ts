import { type Command, Option } from 'commander';
import type { Limits } from '../../../core/strategy/shots.ts';
import type { AttitudeName } from '../../planning/plan-round.ts';
import { AIR_OPTION_OF, type AirOptions, addAirOptions } from './air-options.ts';
import { addGroundOptions, type GroundOptions } from './ground-options.ts';
import { discClasses } from './limit-options.ts';
import { wholeNumber } from './reading.ts';
import { addWindOptions, WIND_OPTION_OF, type WindOptions } from './wind-options.ts';

/** What every verb that plans a round is told. */
export type PlanningOptions = AirOptions &
  WindOptions &
  GroundOptions &
  Readonly<{
    player: string;
    only?: Limits['classes'];
    hand?: 'backhand' | 'forehand';
    layout?: string;
    holes?: string;
    attitude: AttitudeName;
    target?: number;
    bag?: number;
    seed: number;
  }>;

export const LAYOUT_HELP = 'play this layout of the course: its tees, baskets and order';

export const PLANNING_OPTION_OF: Readonly<Record<string, string>> = {
  ...AIR_OPTION_OF,
  ...WIND_OPTION_OF,
  holes: '--holes',
  layout: '--layout',
  target: '--target',
  bag: '--bag',
  limits: '--only/--hand',
};

export function addPlanningOptions(command: Command): Command {
  command
    .argument('<course>', 'course file (GeoJSON)')
    .requiredOption('--player <file>', 'player file (JSON): discs, fieldwork, putting');
  return addGroundOptions(addWindOptions(addAirOptions(command)))
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
    .option('--layout <name>', LAYOUT_HELP)
    .option('--holes <holes>', 'these holes only: 1,3-5 or all')
    .addOption(
      new Option('--seed <number>', 'of the simulated throws; same seed, same plan').argParser(wholeNumber).default(1),
    );
}
