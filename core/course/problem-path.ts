/** A path as the user reads it: `features[3].geometry.coordinates[0]`. */
export function problemPath(parts: readonly PropertyKey[]): string {
  return parts.reduce<string>((path, part) => {
    if (typeof part === 'number') return `${path}[${part}]`;
    return path === '' ? String(part) : `${path}.${String(part)}`;
  }, '');
}
