/** The disc edge-on as the thrower holds it: tilted outer edge down for hyzer, up for anhyzer. @param hyzer_deg - positive outer edge down */
export function TiltGlyph({ hyzer_deg, hand }: Readonly<{ hyzer_deg: number; hand: 'backhand' | 'forehand' }>) {
  // Seen from behind, the outer edge of a right-hander's backhand is on the right, of a forehand on the left.
  const turn = hand === 'backhand' ? -hyzer_deg : hyzer_deg;
  return (
    <svg className="glyph" viewBox="0 0 48 48" aria-hidden="true">
      <line className="glyph-level" x1="4" y1="24" x2="44" y2="24" />
      <g transform={`rotate(${-turn} 24 24)`}>
        <path className="glyph-disc" d="M6 25C8 19 40 19 42 25C42 29 37 28 36 27H12C11 28 6 29 6 25Z" />
      </g>
    </svg>
  );
}

/** Launch angle against the level. */
export function LaunchGlyph({ launch_deg }: Readonly<{ launch_deg: number }>) {
  return (
    <svg className="glyph" viewBox="0 0 48 48" aria-hidden="true">
      <line className="glyph-level" x1="5" y1="38" x2="44" y2="38" />
      <g transform={`rotate(${-Math.max(-20, Math.min(60, launch_deg))} 6 38)`}>
        <path className="glyph-arrow" d="M6 38H38M31 32L39 38L31 44" />
      </g>
    </svg>
  );
}

/** Share of full power as a filled column. */
export function PowerGlyph({ power }: Readonly<{ power: number }>) {
  const tall = 38 * power;
  return (
    <svg className="glyph" viewBox="0 0 48 48" aria-hidden="true">
      <rect className="glyph-empty" x="16" y="5" width="16" height="38" rx="3" />
      <rect className="glyph-full" x="16" y={43 - tall} width="16" height={tall} rx="3" />
    </svg>
  );
}

/** The basket straight ahead, the aim beside it. @param aim_deg - right positive; drawn wider than it is, to be seen */
export function AimGlyph({ aim_deg }: Readonly<{ aim_deg: number }>) {
  const shown = Math.max(-50, Math.min(50, aim_deg * 1.6));
  return (
    <svg className="glyph" viewBox="0 0 48 48" aria-hidden="true">
      <path className="glyph-basket" d="M24 44V6M19 6H29M19 13H29" />
      <g transform={`rotate(${shown} 24 44)`}>
        <path className="glyph-arrow" d="M24 44V12M18 19L24 10L30 19" />
      </g>
    </svg>
  );
}
