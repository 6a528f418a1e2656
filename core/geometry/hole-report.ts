import { z } from 'zod';

const metres = z.number();
const degrees = z.number();

/** Free height over a stretch of the line of play. */
const CeilingReport = z.object({
  from_m: metres,
  to_m: metres,
  clearance_m: metres.describe('free height above the ground'),
  source: z.string().describe('what hangs there and where it is mapped'),
});

/** Something to pass between; stations run from the tee along the line of play. */
const GapReport = z.object({
  station_m: metres.describe('where it is narrowest, or where a corridor of one width begins'),
  from_m: metres,
  to_m: metres,
  width_m: metres,
  low_m: metres.describe('lower edge of the opening above the ground'),
  high_m: metres.nullable().describe('upper edge of the opening above the ground; null: open above'),
  windowWidth_deg: degrees.describe('how wide the opening at station_m looks from the tee'),
  windowHeight_deg: degrees.nullable().describe('how high it looks from the tee at release height; null: open above'),
  source: z.string(),
});

const Side = z.enum(['left', 'right']);

/** What `holes` reports of one hole; metres, true degrees, heights above the ground; null where the map does not say. */
export const HoleReportSchema = z.object({
  ref: z.string(),
  name: z.string().optional(),
  par: z.int(),
  parSource: z.enum(['tagged', 'derived']),
  length_m: metres.describe('tee to basket on the WGS 84 ellipsoid'),
  playLength_m: metres.describe('along the line of play'),
  bearing_deg: degrees.describe('true bearing of the basket from the tee'),
  rise_m: metres.nullable().describe('basket above tee; null: heights not mapped'),
  slopeLength_m: metres.nullable().describe('straight through the air from tee to basket; null: heights not mapped'),
  bends: z.array(z.object({ station_m: metres, angle_deg: degrees.describe('right positive') })),
  ceilings: z.array(CeilingReport),
  gaps: z.array(GapReport),
  narrowest: z
    .object({ station_m: metres, width_m: metres, left_source: z.string(), right_source: z.string() })
    .nullable(),
  barriers: z.array(
    z.object({
      from_m: metres,
      to_m: metres,
      height_m: metres.describe('top above the ground: throw over, or through the stems'),
      source: z.string(),
    }),
  ),
  outOfBounds: z.array(
    z.object({
      side: z
        .enum(['left', 'right', 'across', 'beyond'])
        .describe('across: the line of play crosses it; beyond: behind the basket'),
      from_m: metres,
      to_m: metres,
      closest_m: metres,
      station_m: metres.describe('where it comes closest'),
      what: z.string(),
    }),
  ),
  mandos: z.array(
    z.object({
      station_m: metres,
      side: z.enum(['left', 'right', 'above', 'below']).describe('the side to pass the object on'),
      low_m: metres.describe('the plane not to enter: from this height'),
      high_m: metres.nullable().describe('up to this; null: no upper end'),
      assumed: z.array(z.string()),
      source: z.string(),
    }),
  ),
  pathCrossings: z.array(z.object({ station_m: metres, what: z.string() })),
  peopleNearby: z.array(z.object({ station_m: metres, distance_m: metres, side: Side, what: z.string() })),
  blindSpots: z.array(
    z.object({
      target: z.enum(['bend', 'basket']),
      station_m: metres.describe('what cannot be seen from the tee'),
      blockedAt_m: metres.describe('where the sight is cut, straight from the tee'),
      blockedBy: z.string(),
    }),
  ),
  assumptions: z.array(z.string()),
  notMapped: z.array(z.string()).describe('kinds of thing the map says nothing about: not the same as none'),
});

export type HoleReport = Readonly<z.output<typeof HoleReportSchema>>;
export type CeilingReport = Readonly<z.output<typeof CeilingReport>>;
export type GapReport = Readonly<z.output<typeof GapReport>>;
