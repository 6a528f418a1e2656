import type { FlightReport } from '../../../core/flight/flight-report.ts';
import { formatLength } from '../../../core/units/length.ts';
import { formatSpeed } from '../../../core/units/speed.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, sideIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import type { Terminal } from '../terminal.ts';

const ROWS = 12;

/** A flight in words and a dozen points of its path. */
export function flightTable(flight: FlightReport, units: Units, terminal: Terminal): string {
  const { columns } = terminal;
  const long = (length_m: number) => formatLength(length_m, CHOSEN[units], 1);
  const { release, air, rest } = flight;
  const bank = `${Math.abs(release.hyzer_deg)}° ${release.hyzer_deg < 0 ? 'anhyzer' : 'hyzer'}`;
  const wind =
    air.wind_mps === 0 ? 'no wind' : `wind ${formatSpeed(air.wind_mps, CHOSEN[units])} ${windWords(air.windFrom_deg)}`;
  const last = flight.path.length - 1;
  const every = Math.max(1, Math.round(last / (ROWS - 1)));
  const points = flight.path.filter((_, i) => i === last || (i % every === 0 && last - i > every / 2));
  return [
    wrapped(
      `${formatSpeed(release.speed_mps, CHOSEN[units])}, launch ${release.launch_deg.toFixed(1)}°, ${release.hyzer_deg === 0 ? 'flat' : bank}, ${noseWords(release.nose_deg)}; ${wind}, air ${air.density_kgpm3.toFixed(3)} kg/m³`,
      columns,
      'released  ',
    ),
    wrapped(
      `${flight.time_s.toFixed(1)} s in the air, ${long(flight.apex_m)} high, ${long(flight.carry_m)} to touchdown`,
      columns,
      'flight    ',
    ),
    wrapped(`at rest ${long(rest.x_m)} ahead, ${sideWords(-rest.y_m, units)}`, columns, 'ends      '),
    '\n',
    table(
      [
        { head: 's', align: 'right' },
        { head: `ahead ${CHOSEN[units].length}`, align: 'right' },
        { head: `side ${CHOSEN[units].length}`, align: 'right' },
        { head: `height ${CHOSEN[units].length}`, align: 'right' },
      ],
      points.map(([t_s, x_m, y_m, z_m]) => [
        t_s.toFixed(2),
        lengthIn(units, x_m, 1),
        sideIn(units, -y_m, 1),
        lengthIn(units, z_m, 1),
      ]),
      terminal,
    ),
    ...(flight.notes.length > 0 ? ['\n', bullets(flight.notes, columns, '')] : []),
  ].join('');
}

function sideWords(right_m: number, units: Units): string {
  const text = sideIn(units, right_m, 1);
  if (text === 'straight') return 'on the aim';
  const [size, word] = text.split(' ');
  return `${size} ${CHOSEN[units].length} to the ${word} of the aim`;
}

const SIDES = ['ahead', 'ahead right', 'the right', 'behind right', 'behind', 'behind left', 'the left', 'ahead left'];

function windWords(from_deg: number): string {
  const side = SIDES[Math.round(from_deg / 45) % SIDES.length];
  return `from ${side} (${from_deg}° clockwise from the aim)`;
}

function noseWords(nose_deg: number): string {
  if (nose_deg === 0) return 'nose level with the throw';
  return `nose ${Math.abs(nose_deg)}° ${nose_deg > 0 ? 'up' : 'down'}`;
}
