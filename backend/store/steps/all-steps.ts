import type { Step } from '../migrate.ts';
import { step10 } from './step-10.ts';
import { step20 } from './step-20.ts';
import { step30 } from './step-30.ts';
import { step40 } from './step-40.ts';
import { step60 } from './step-60.ts';
import { step70 } from './step-70.ts';

/** Numbered by tens. One that has landed is never edited: a change of the tables is a new step. */
export const ALL_STEPS: readonly Step[] = [step10, step20, step30, step40, step60, step70];
