/** The units a player reads. Inside, everything is SI; this is only for the way out. */
export type UnitsChoice = Readonly<{ length: 'm' | 'ft'; speed: 'mps' | 'mph' | 'kmh' | 'kn' }>;
