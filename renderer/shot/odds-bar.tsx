import { percent } from '../words/percent.ts';

type OddsBarProps = Readonly<{ label: string; share: number; tone: 'good' | 'bad' }>;

/** A chance as words, a number and a bar; the number carries it, the bar only helps. */
export function OddsBar({ label, share, tone }: OddsBarProps) {
  return (
    <div className="odds" data-tone={tone} data-grave={(tone === 'bad' && share >= 0.05) || undefined}>
      <span className="odds-label">{label}</span>
      <span className="odds-value">{percent(share)}</span>
      <svg className="odds-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <rect className="odds-room" width="100" height="6" />
        <rect className="odds-share" width={100 * share} height="6" />
      </svg>
    </div>
  );
}
