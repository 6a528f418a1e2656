const NO_BREAK_SPACE = '\u00a0';

/**
 * A name as it stands in a sentence written in metres: what looks like a quantity in it ("Old 9 m gate") is kept together with a
 * no-break space, which `inUnits` does not read, so that a reader of feet gets the name as it is.
 */
export const nameInText = (name: string): string =>
  name.replace(/(\d) (?=m(?:\/s)?(?![\p{L}\p{N}/]))/gu, `$1${NO_BREAK_SPACE}`);
