import type { Result } from '../../core/units/result.ts';
import { type CourseShare, isSharePage, readSharePage } from './share-file.ts';

/** What a file carries when it is a course sharing page; null for any other file, which then says itself what it is. */
export function sharedIn(bytes: Uint8Array): Result<CourseShare> | null {
  // Not worth reading as text: every other kind of course file begins otherwise.
  const start = Buffer.from(bytes.subarray(0, 200)).toString('utf8');
  if (!/^\uFEFF?\s*<!doctype html/i.test(start)) return null;
  const text = Buffer.from(bytes)
    .toString('utf8')
    .replace(/^\uFEFF/, '');
  return isSharePage(text) ? readSharePage(text) : null;
}
