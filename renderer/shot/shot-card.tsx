import { memo } from 'react';
import type { HoleReport } from '../../core/geometry/hole-report.ts';
import { isSpecialShape } from '../../core/strategy/flown-as.ts';
import { heightWord } from '../../core/strategy/height-word.ts';
import type { ShotReport } from '../../core/strategy/plan-report.ts';
import { specialCautions, specialRelease } from '../../core/strategy/special-words.ts';
import { aimWords } from '../words/aim-words.ts';
import { capital } from '../words/number-words.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';
import { keepAwayFrom } from './keep-away.ts';
import { LEAST_PENALTY } from './least-penalty.ts';
import { OddsBar } from './odds-bar.tsx';
import { AimGlyph, LaunchGlyph, PowerGlyph, TiltGlyph } from './shot-glyphs.tsx';

type ShotCardProps = Readonly<{
  shot: ShotReport;
  /** Names what lies beside the hole; null while it is not read. */
  report: HoleReport | null;
  /** From where it comes to rest to the basket; null while that is not known. */
  leaves_m: number | null;
  /** What stands above the card when it is not the plan's own choice. */
  standing: 'choice' | 'pinned' | 'tried';
  isStale: boolean;
  label?: string;
}>;

const STANDING = { choice: 'Throw', pinned: 'Your pinned throw', tried: 'Trying instead' } as const;

/** What to throw, how, where to aim, how sure, what to stay away from. The biggest thing on the screen. */
export const ShotCard = memo(function ShotCard({
  shot,
  report,
  leaves_m,
  standing,
  isStale,
  label = 'The throw',
}: ShotCardProps) {
  const units = useUnits();
  const bank = Math.round(Math.abs(shot.hyzer_deg));
  const away = keepAwayFrom(shot, report);
  return (
    <section className="shot-card" data-standing={standing} data-stale={isStale || undefined} aria-label={label}>
      <div className="shot-what">
        <p className="shot-standing">
          {STANDING[standing]}
          {isStale && <span className="stale-word"> · planning again…</span>}
        </p>
        <h2 className="shot-disc">{shot.disc}</h2>
        <p className="shot-title">
          {capital(shot.title)}
          {shot.title.includes(shot.hand) ? '' : `, ${shot.hand}`}
        </p>
      </div>
      <dl className="shot-how">
        <div>
          <TiltGlyph hyzer_deg={shot.hyzer_deg} hand={shot.hand} />
          <dt>Release</dt>
          <dd>
            {isSpecialShape(shot.shape)
              ? capital(specialRelease({ shape: shot.shape, hyzer_deg: shot.hyzer_deg }))
              : bank === 0
                ? 'Flat'
                : `${bank}° ${shot.hyzer_deg > 0 ? 'hyzer' : 'anhyzer'}`}
          </dd>
        </div>
        <div>
          <AimGlyph aim_deg={shot.aimFromBasket_deg} />
          <dt>Aim</dt>
          <dd>{capital(aimWords(shot.aimFromBasket_deg))}</dd>
        </div>
        <div>
          <PowerGlyph power={shot.power} />
          <dt>Power</dt>
          <dd>{shot.power >= 0.995 ? 'Full' : percent(shot.power)}</dd>
        </div>
        <div>
          <LaunchGlyph launch_deg={shot.launch_deg} />
          <dt>Height</dt>
          <dd>
            {shot.shape === 'roller' ? 'Rolls' : shot.shape === 'overhead' ? 'Steep' : capital(heightWord(shot.apex_m))}
            <span className="how-more">
              {shot.shape === 'roller'
                ? `from ${units.length(shot.carry_m, 0)} on`
                : `peaks ${units.length(shot.apex_m)} up`}
            </span>
          </dd>
        </div>
      </dl>
      <div className="shot-odds">
        <OddsBar label="Clean flight" share={shot.cleanChance} tone="good" />
        {shot.within20mChance >= 0.01 ? (
          <>
            <OddsBar label={`Inside ${units.length(10, 0)}`} share={shot.within10mChance} tone="good" />
            <OddsBar label={`Inside ${units.length(20, 0)}`} share={shot.within20mChance} tone="good" />
          </>
        ) : (
          <p className="shot-leaves">
            <span className="odds-label">Leaves about</span>{' '}
            <span className="odds-value">{leaves_m === null ? '–' : units.length(leaves_m, 0)}</span>
            <span className="odds-label"> to the basket</span>
          </p>
        )}
        {shot.holedChance !== undefined && <OddsBar label="Goes in" share={shot.holedChance} tone="good" />}
        {shot.penaltyChance >= LEAST_PENALTY && <OddsBar label="Penalty" share={shot.penaltyChance} tone="bad" />}
      </div>
      {away.length > 0 && (
        <p className="shot-away">
          <strong>Stay away from</strong> {away.join('; ')}
        </p>
      )}
      {specialCautions([shot.shape]).map(text => (
        <p key={text} className="shot-away">
          {text}
        </p>
      ))}
    </section>
  );
});
