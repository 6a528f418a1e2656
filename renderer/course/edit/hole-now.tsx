import type { HoleReport } from '../../../core/geometry/hole-report.ts';
import { keyed } from '../../frame/keyed.ts';
import { useUnits } from '../../words/use-units.ts';

/** What the hole measures as drawn: it follows the hand. */
export function HoleNow({ report }: Readonly<{ report: HoleReport }>) {
  const units = useUnits();
  const { ceilings, gaps, bends, outOfBounds, blindSpots, narrowest } = report;
  return (
    <dl className="hole-now">
      <div>
        <dt>Length</dt>
        <dd>
          {units.length(report.length_m, 1)}
          {Math.abs(report.playLength_m - report.length_m) >= 0.5 &&
            `, ${units.length(report.playLength_m, 1)} along the line`}
          {`, towards ${Math.round(report.bearing_deg) % 360}°`}
        </dd>
      </div>
      <div>
        <dt>Par</dt>
        <dd>
          {report.par}
          {report.parSource === 'derived' && ' by length'}
        </dd>
      </div>
      {report.rise_m !== null && (
        <div>
          <dt>Rise</dt>
          <dd>{units.length(report.rise_m, 1).replace('-', '−')}</dd>
        </div>
      )}
      {bends.length > 0 && (
        <div>
          <dt>Bends</dt>
          <dd>
            {bends
              .map(
                ({ station_m, angle_deg }) =>
                  `${Math.round(Math.abs(angle_deg))}° ${angle_deg < 0 ? 'left' : 'right'} at ${units.length(station_m, 0)}`,
              )
              .join('; ')}
          </dd>
        </div>
      )}
      <Lines
        what="Low branches"
        none="none over the line"
        lines={ceilings.map(
          ({ from_m, to_m, clearance_m }) =>
            `${units.length(clearance_m, 1)} free from ${units.length(from_m, 0)} to ${units.length(to_m, 0)}`,
        )}
      />
      <Lines
        what="Gaps"
        none="none on the line"
        lines={gaps.map(({ station_m, width_m, windowWidth_deg, windowHeight_deg }) => {
          const high = windowHeight_deg === null ? 'open above' : `${windowHeight_deg.toFixed(1)}° high`;
          return `${units.length(width_m, 1)} wide at ${units.length(station_m, 0)}; from the tee ${windowWidth_deg.toFixed(1)}° wide, ${high}`;
        })}
      />
      {gaps.length === 0 && narrowest !== null && (
        <div>
          <dt>Narrowest</dt>
          <dd>
            {units.length(narrowest.width_m, 1)} at {units.length(narrowest.station_m, 0)}
          </dd>
        </div>
      )}
      <Lines
        what="Out-of-bounds"
        none="none near the line"
        lines={outOfBounds.map(({ side, closest_m, from_m, to_m }) =>
          side === 'across'
            ? `across the line from ${units.length(from_m, 0)} to ${units.length(to_m, 0)}`
            : side === 'beyond'
              ? `${units.length(closest_m, 1)} behind the basket`
              : `${side}, ${units.length(closest_m, 1)} off at the closest`,
        )}
      />
      {blindSpots.length > 0 && (
        <div>
          <dt>Not seen from the tee</dt>
          <dd>{blindSpots.map(({ target }) => `the ${target}`).join(', ')}</dd>
        </div>
      )}
    </dl>
  );
}

function Lines({ what, none, lines }: Readonly<{ what: string; none: string; lines: readonly string[] }>) {
  return (
    <div>
      <dt>{what}</dt>
      {lines.length === 0 ? (
        <dd className="soft">{none}</dd>
      ) : (
        keyed(lines).map(({ key, item }) => <dd key={key}>{item}</dd>)
      )}
    </div>
  );
}
