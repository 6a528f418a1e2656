export type Disc = Readonly<{
  id: string;
  name: string;
  class: 'putter' | 'midrange' | 'fairway' | 'control' | 'distance';
  speed: number;
  glide: number;
  turn: number;
  fade: number;
  mass_g: number;
  diameter_mm: number;
  rimWidth_mm: number;
  /** 0 new … 1 worn out. */
  wear: number;
  role: 'putting' | 'throwing';
}>;

export type Wind = Readonly<{ speed_mps: number; from_deg: number; height_m: number }>;
export type Throw = Readonly<{
  discId: string;
  hand: 'backhand' | 'forehand';
  shape: 'hyzer' | 'flat' | 'anhyzer';
  power: 'full' | number;
  /** Where it came to rest: along the aim line, and right of it. */
  distance_m: number;
  side_m: number;
}>;
export type Session = Readonly<{
  date: string;
  wind: Wind;
  bearing_deg: number;
  rise_m: number;
  throws: readonly Throw[];
}>;
export type Putts = Readonly<{ distance_m: number; attempts: number; makes: number }>;
export type PlayerFile = Readonly<{
  schema: 'roundwright/player@1';
  name: string;
  handedness: 'right' | 'left';
  discs: readonly Disc[];
  sessions: readonly Session[];
  putting: readonly Putts[];
}>;

/** The file's text: one disc, throw or row of putts a line. */
export function playerText(player: PlayerFile): string {
  const rows = (items: readonly unknown[], indent: string) =>
    `[\n${items.map(item => indent + JSON.stringify(item)).join(',\n')}\n${indent.slice(2)}]`;
  const session = ({ throws, ...rest }: Session) =>
    `    ${JSON.stringify(rest).slice(0, -1)},"throws":${rows(throws, '      ')}}`;
  return `{
  "schema": ${JSON.stringify(player.schema)},
  "name": ${JSON.stringify(player.name)},
  "handedness": ${JSON.stringify(player.handedness)},
  "discs": ${rows(player.discs, '    ')},
  "sessions": [
${player.sessions.map(session).join(',\n')}
  ],
  "putting": ${rows(player.putting, '    ')}
}
`;
}
