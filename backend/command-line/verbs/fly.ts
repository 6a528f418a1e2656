import { type Command, Option } from 'commander';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import { type FlyInput, flyDisc } from '../../api/fly-disc.ts';
import type { Context } from '../context.ts';
import { loadPlayer } from '../load.ts';
import { discOf } from '../options/disc-numbers.ts';
import { angle_deg, length_m, mass_g, speed_mps, temperature_C } from '../options/reading.ts';
import { usageError } from '../options/usage.ts';
import { EXIT, printProblems } from '../problems.ts';
import { during } from '../progress.ts';
import { type Units, unitsOption } from '../show-units.ts';
import { flightTable } from '../tables/flight-table.ts';

type FlyOptions = Readonly<{
  disc: FlyInput['disc'];
  player?: string;
  speed?: number;
  launch?: number;
  hyzer?: number;
  nose?: number;
  hand: 'backhand' | 'forehand';
  leftHanded?: true;
  wind?: number;
  windFrom?: number;
  temperature?: number;
  altitude?: number;
  mass?: number;
  surface: 'longGrass' | 'turf' | 'hardpan';
  json?: true;
  units: Units;
}>;

const SURFACES = { 'long-grass': 'longGrass', turf: 'turf', hardpan: 'hardpan' } as const;

const OPTION_OF = {
  disc: '--disc',
  mass_g: '--mass',
  speed_mps: '--speed',
  launch_deg: '--launch',
  nose_deg: '--nose',
  hyzer_deg: '--hyzer',
  hand: '--hand',
  handedness: '--left-handed',
  wind_mps: '--wind',
  windFrom_deg: '--wind-from',
  temperature_C: '--temperature',
  altitude_m: '--altitude',
};

export function addFly(program: Command, { terminal, exit }: Context): void {
  program
    .command('fly')
    .description('one simulated flight over level ground: its path, how high, where it ends')
    .addOption(
      new Option('--disc <disc>', 'speed/glide/turn/fade such as 7/5/-1/1.5, or with --player the id of a disc')
        .argParser(discOf)
        .makeOptionMandatory(),
    )
    .option('--player <file>', 'player file (JSON): the disc as this player throws it')
    .addOption(
      new Option('--speed <speed>', 'release speed: 22 (m/s), 50mph (with --player: the own)').argParser(speed_mps),
    )
    .addOption(
      new Option('--launch <degrees>', 'upward angle of the throw (default: the farthest)').argParser(angle_deg),
    )
    .addOption(new Option('--hyzer <degrees>', 'outer edge down; negative: anhyzer').argParser(angle_deg))
    .addOption(new Option('--nose <degrees>', 'nose up against the throw; negative: down').argParser(angle_deg))
    .addOption(new Option('--hand <hand>', 'how it is thrown').choices(['backhand', 'forehand']).default('backhand'))
    .option('--left-handed', 'thrown with the left hand')
    .addOption(new Option('--wind <speed>', 'wind at 10 m over open ground: 6 (m/s), 12mph').argParser(speed_mps))
    .addOption(
      new Option(
        '--wind-from <degrees>',
        'clockwise from the aim: 0 headwind (default), 90 from the right, 180 tailwind, 270 from the left',
      ).argParser(angle_deg),
    )
    .addOption(new Option('--temperature <degrees>', '18 (°C) or 65F').argParser(temperature_C))
    .addOption(new Option('--altitude <height>', 'above sea level: 300 (m) or 1000ft').argParser(length_m))
    .addOption(new Option('--mass <grams>', 'mass of the disc (default: 173)').argParser(mass_g))
    .addOption(new Option('--surface <surface>', 'what it lands on').choices(Object.keys(SURFACES)).default('turf'))
    .option('--json', 'machine-readable flight')
    .addOption(unitsOption())
    .action((options: FlyOptions, command: Command) => {
      let player: FittedPlayer | undefined;
      if (options.player !== undefined) {
        if (typeof options.disc !== 'string')
          return usageError(
            command,
            [{ path: 'disc', message: 'with --player give the id of a disc, not numbers' }],
            OPTION_OF,
          );
        const file = loadPlayer(options.player);
        if (!file.ok) {
          printProblems(options.player, file.problems, terminal);
          return exit(EXIT.badInput);
        }
        player = during(terminal, 'fitting the throws', () => fitPlayer(file.value));
      }
      const flight = flyDisc(inputOf(options), player);
      if (!flight.ok) return usageError(command, flight.problems, OPTION_OF);
      if (options.json) terminal.out(`${JSON.stringify(flight.value)}\n`);
      else terminal.out(flightTable(flight.value, options.units, terminal));
      return exit(EXIT.good);
    });
}

function inputOf(options: FlyOptions): FlyInput {
  return {
    disc: options.disc,
    mass_g: options.mass,
    speed_mps: options.speed,
    launch_deg: options.launch,
    nose_deg: options.nose,
    hyzer_deg: options.hyzer,
    hand: options.hand,
    handedness: options.leftHanded ? 'left' : undefined,
    wind_mps: options.wind,
    windFrom_deg: options.windFrom,
    temperature_C: options.temperature,
    altitude_m: options.altitude,
    surface: SURFACES[options.surface as keyof typeof SURFACES],
  };
}
