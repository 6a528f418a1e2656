import { onTestFinished } from 'vitest';
import type { Input, Method, Output } from '../../../backend/api/contract/api.ts';
import type { AppEvent } from '../../../backend/api/contract/events.ts';
import { type Backend, openBackend } from '../../../backend/api/open-backend.ts';
import type { PlanningDesk } from '../../../backend/planning/planning-desk.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';

export type TestBackend = Readonly<{
  backend: Backend;
  folder: string;
  faults: unknown[];
  events: AppEvent[];
  /** The value of a call that must be answered. */
  ask<K extends Method>(method: K, input: Input<K>): Promise<Output<K>>;
  /** The problems of a call that must be refused. */
  refused(method: Method, input: unknown): Promise<readonly Problem[]>;
}>;

/** A backend of one test's own, on a new library. */
export function openTestBackend(options: Readonly<{ desk?: PlanningDesk; folder?: string }> = {}): TestBackend {
  const folder = options.folder ?? temporaryFolder();
  const faults: unknown[] = [];
  const backend = taken(
    openBackend({ folder, onFault: (_, fault) => faults.push(fault), ...(options.desk && { desk: options.desk }) }),
  );
  onTestFinished(() => backend.close());
  const events: AppEvent[] = [];
  backend.subscribe(event => events.push(event));
  return {
    backend,
    folder,
    faults,
    events,
    ask: async (method, input) => taken((await backend.call(method, input)) as Result<never>),
    refused: async (method, input) => {
      const answer = await backend.call(method, input);
      if (answer.ok) throw new Error(`${method} took ${JSON.stringify(input).slice(0, 200)}`);
      return answer.problems;
    },
  };
}

/** The small course and player of the planning tests, in the library. */
export async function addTinyRound({ ask }: Pick<TestBackend, 'ask'>) {
  const { courseId } = await ask('importCourse', { fileName: 'tiny.geojson', text: JSON.stringify(tinyCourse()) });
  const { playerId } = await ask('importPlayer', { fileName: 'tiny.json', text: JSON.stringify(tinyPlayer()) });
  return { courseId, playerId };
}
