/** Nothing but the app's own files; the sheet is a frame of its own. */
const APP_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "frame-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The printed sheet carries its own style and nothing else, and is shown in a frame of the app. */
const SHEET_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

const COMMON = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
} as const;

/** Headers of every answer; `X-Frame-Options` says to old browsers what `frame-ancestors` says. */
export const APP_HEADERS = {
  ...COMMON,
  'Content-Security-Policy': APP_POLICY,
  'X-Frame-Options': 'DENY',
  'Cache-Control': 'no-store',
} as const;

export const SHEET_HEADERS = {
  ...COMMON,
  'Content-Security-Policy': SHEET_POLICY,
  'X-Frame-Options': 'SAMEORIGIN',
  'Cache-Control': 'no-store',
} as const;
