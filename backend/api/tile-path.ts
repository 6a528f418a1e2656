/** The input of `getTile` from a path like `/tiles/<any key>/15/18650/9479`; the key tells one base map's pictures from another's. */
export function tilePath(pathname: string): Readonly<{ z: number; x: number; y: number }> | null {
  const found = /^\/tiles\/[\w-]{1,64}\/(\d{1,2})\/(\d{1,8})\/(\d{1,8})$/.exec(pathname);
  if (found === null) return null;
  const [z, x, y] = found.slice(1).map(Number);
  return { z: z!, x: x!, y: y! };
}
