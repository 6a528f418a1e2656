const WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file: check the name and the folder',
  ENOTDIR: 'there is no such file: a part of its path is not a folder',
  EACCES: 'may not be read: change its permissions',
  EPERM: 'may not be read: change its permissions',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'the name is too long for a file',
};

/** Why a file cannot be read, and what to do. @param error - what the file system threw */
export function fileTrouble(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return WORDS[code ?? ''] ?? `cannot be read (${code ?? String(error)})`;
}
