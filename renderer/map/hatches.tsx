/** Patterns that tell ground apart without colour: slanted lines are out-of-bounds, waves water, dots a hazard, crosses where discs get lost. */
export function Hatches() {
  return (
    <svg className="hatches" aria-hidden="true" width="0" height="0">
      <defs>
        <pattern id="hatch-out" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className="hatch-out-ground" width="8" height="8" />
          <rect className="hatch-out-line" width="2.6" height="8" />
        </pattern>
        <pattern id="hatch-water" width="16" height="9" patternUnits="userSpaceOnUse">
          <rect className="hatch-water-ground" width="16" height="9" />
          <path className="hatch-water-line" d="M0 5q4-4 8 0t8 0" />
        </pattern>
        <pattern id="hatch-hazard" width="8" height="8" patternUnits="userSpaceOnUse">
          <rect className="hatch-hazard-ground" width="8" height="8" />
          <circle className="hatch-hazard-dot" cx="4" cy="4" r="1.5" />
        </pattern>
        <pattern id="hatch-lost" width="12" height="12" patternUnits="userSpaceOnUse">
          <path className="hatch-lost-line" d="M3 3l4 4m0 -4l-4 4" />
        </pattern>
        <pattern id="hatch-ceiling" width="6" height="6" patternUnits="userSpaceOnUse">
          <path className="hatch-ceiling-line" d="M0 1h6M0 4h6" />
        </pattern>
      </defs>
    </svg>
  );
}
