/** One thing wrong with outside data: where it is and how to mend it. `path` reads like `features[3].properties.height`. */
export type Problem = Readonly<{ path: string; message: string }>;

/** A value, or the list of everything wrong with the input; outside data never throws. */
export type Result<T> = Readonly<{ ok: true; value: T }> | Readonly<{ ok: false; problems: readonly Problem[] }>;
