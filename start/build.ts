import { resolve } from 'node:path';
import { buildStale } from './build-stale.ts';

// `npm run build`: everything, stale or not.
await buildStale(resolve(import.meta.dirname, '..'), ['page', 'shell'], { say: console.log, always: true });
