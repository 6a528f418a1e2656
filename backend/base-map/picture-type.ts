/** Pictures a map can be made of. */
export type PictureType = 'image/png' | 'image/jpeg' | 'image/webp';

/** What the bytes begin like, whatever is said of them; undefined for anything that is no such picture. */
export function pictureType(bytes: Uint8Array): PictureType | undefined {
  const begins = (start: readonly number[], at = 0) => start.every((byte, k) => bytes[at + k] === byte);
  if (begins([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  if (begins([0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (begins([0x52, 0x49, 0x46, 0x46]) && begins([0x57, 0x45, 0x42, 0x50], 8)) return 'image/webp';
  return undefined;
}
