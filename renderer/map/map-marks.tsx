/** The hole lies on its side, so north is where this points. */
export function NorthMark({ bearing_deg }: Readonly<{ bearing_deg: number }>) {
  // On the map the hole's bearing points right; north is that much further anticlockwise.
  const turn = 90 - bearing_deg;
  return (
    <svg
      className="north-mark"
      viewBox="-20 -20 40 40"
      role="img"
      aria-label={`The basket lies at ${Math.round(bearing_deg)}° from north`}
    >
      <g transform={`rotate(${turn})`}>
        <path d="M0 -12L5 8L0 4L-5 8Z" />
      </g>
      <text x={0} y={0} transform={`rotate(${turn}) translate(0 -13) rotate(${-turn})`}>
        N
      </text>
    </svg>
  );
}

type WindMarkProps = Readonly<{ from_deg: number; bearing_deg: number; text: string }>;

/** Which way the wind blows over the hole as drawn. */
export function WindMark({ from_deg, bearing_deg, text }: WindMarkProps) {
  return (
    <div className="wind-mark">
      <svg viewBox="-20 -20 40 40" aria-hidden="true">
        <g transform={`rotate(${from_deg + 180 + 90 - bearing_deg})`}>
          <path d="M0 15V-14M-6 -7L0 -15L6 -7M-9 12V-1M9 12V-1" />
        </g>
      </svg>
      {text}
    </div>
  );
}
