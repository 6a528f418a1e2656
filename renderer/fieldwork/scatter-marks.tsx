/** How a throw counts, by form as well as by colour. */
export type Standing = 'counts' | 'counts less' | 'set aside';

export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  counts: 'counts in full',
  'counts less': 'counts less',
  'set aside': 'set aside as an outlier',
};

/** One rest: a full dot, a hollow one, or a cross. */
export function RestMark({ x, y, standing }: Readonly<{ x: number; y: number; standing: Standing }>) {
  switch (standing) {
    case 'counts':
      return <circle cx={x} cy={y} r={4} className="rest-counts" />;
    case 'counts less':
      return <circle cx={x} cy={y} r={4} className="rest-less" />;
    case 'set aside':
      return (
        <path d={`M${x - 4} ${y - 4}L${x + 4} ${y + 4}M${x - 4} ${y + 4}L${x + 4} ${y - 4}`} className="rest-aside" />
      );
    default:
      return standing satisfies never;
  }
}

/** What the marks of the pictures mean. */
export function ScatterLegend() {
  return (
    <ul className="scatter-legend" aria-label="What the marks mean">
      {(Object.keys(STANDING_WORDS) as Standing[]).map(standing => (
        <li key={standing}>
          <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
            <RestMark x={7} y={7} standing={standing} />
          </svg>
          {STANDING_WORDS[standing]}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 26 14" width="26" height="14" aria-hidden="true">
          <ellipse cx={13} cy={7} rx={11} ry={5} className="spread-measured" />
        </svg>
        measured: half, nine tenths
      </li>
      <li>
        <svg viewBox="0 0 26 14" width="26" height="14" aria-hidden="true">
          <ellipse cx={13} cy={7} rx={11} ry={5} className="spread-fitted" />
        </svg>
        fitted: half, nine tenths
      </li>
      <li>
        <svg viewBox="0 0 26 14" width="26" height="14" aria-hidden="true">
          <path d="M2 11Q12 9 24 2" className="scatter-flight" />
        </svg>
        fitted middle throw
      </li>
      <li>
        <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
          <path d="M1 7h12M7 1v12" className="scatter-mean" />
        </svg>
        fitted average
      </li>
    </ul>
  );
}
