const WORDS: Readonly<Record<string, string>> = {
  SQLITE_FULL: 'the disk is full: free some space and do it again',
  SQLITE_READONLY:
    'the library may not be written any more: check its folder and permissions, then start the app again',
  SQLITE_IOERR: 'the disk does not answer: check it, then start the app again',
  SQLITE_CORRUPT:
    'the library is damaged: start the app again, it sets the damaged file aside and names the last backup',
  SQLITE_NOTADB:
    'the library is damaged: start the app again, it sets the damaged file aside and names the last backup',
  SQLITE_BUSY: 'another program holds the library: close it there and do it again',
  SQLITE_LOCKED: 'another program holds the library: close it there and do it again',
  SQLITE_NOMEM: 'there is not enough memory: close other programs and do it again',
};

/** What to tell the player when the database itself refused, in words; undefined for any other fault. */
export function storeTrouble(fault: unknown): string | undefined {
  const { code } = (fault ?? {}) as { code?: unknown };
  if (typeof code !== 'string' || !code.startsWith('SQLITE_')) return undefined;
  // Extended codes begin with their kind: SQLITE_IOERR_WRITE.
  const kind = Object.keys(WORDS).find(kind => code === kind || code.startsWith(`${kind}_`));
  return kind === undefined ? undefined : WORDS[kind];
}
