/** Units of speed as they stand beside a number. */
export const SPEED_WORDS = { mps: 'm/s', kmh: 'km/h', mph: 'mph', kn: 'kn' } as const;
