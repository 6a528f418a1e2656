import type { Step } from '../migrate.ts';
import { step10 } from './step-10.ts';

/** Numbered by tens. One that has landed is never edited: a change of the tables is a new step. */
export const ALL_STEPS: readonly Step[] = [step10];
