import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** Two secrets of one run: the address carries the token, the browser keeps the session; neither gives the other away. */
export type Keys = Readonly<{ token: string; session: string }>;

export function makeKeys(): Keys {
  return { token: secret(), session: secret() };
}

/** Takes the same time wherever they differ. */
export function isSecret(given: string | undefined, secret: string): boolean {
  return given !== undefined && timingSafeEqual(digest(given), digest(secret));
}

const secret = () => randomBytes(32).toString('base64url');
const digest = (text: string) => createHash('sha256').update(text).digest();
