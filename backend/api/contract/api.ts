import type { z } from 'zod';
import type { Result } from '../../../core/units/result.ts';
import { baseMap } from './base-map.ts';
import { courseDrafts } from './course-drafts.ts';
import { courses } from './courses.ts';
import type { AppEvent } from './events.ts';
import { fieldwork } from './fieldwork.ts';
import { imports } from './imports.ts';
import { library } from './library.ts';
import { measuring } from './measuring.ts';
import { pins } from './pins.ts';
import { plans } from './plans.ts';
import { players } from './players.ts';
import { practice } from './practice.ts';
import { putting } from './putting.ts';
import { rounds } from './rounds.ts';
import { settings } from './settings.ts';
import { share } from './share.ts';
import { sheet } from './sheet.ts';
import { terrain } from './terrain.ts';
import { whatIf } from './what-if.ts';

/** All that a window may ask for. */
export const api = {
  ...courses,
  ...imports,
  ...courseDrafts,
  ...players,
  ...measuring,
  ...fieldwork,
  ...putting,
  ...plans,
  ...whatIf,
  ...pins,
  ...practice,
  ...rounds,
  ...settings,
  ...sheet,
  ...library,
  ...terrain,
  ...baseMap,
  ...share,
} satisfies Record<string, { input: z.ZodType; output: z.ZodType }>;

export type Method = keyof typeof api;
/** What a caller hands in (defaults may be left out). */
export type Input<K extends Method> = z.input<(typeof api)[K]['input']>;
/** What a handler gets: checked, defaults filled in. */
export type Checked<K extends Method> = z.output<(typeof api)[K]['input']>;
export type Output<K extends Method> = z.output<(typeof api)[K]['output']>;

/** The API as a window sees it; no call rejects, bad input is a list of problems. */
export type Client = { readonly [K in Method]: (input: Input<K>) => Promise<Result<Output<K>>> };

/** Listens to what the backend says unasked. @returns stops listening */
export type Subscribe = (listener: (event: AppEvent) => void) => () => void;

export const METHODS = Object.keys(api) as readonly Method[];
