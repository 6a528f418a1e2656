import type { Problem } from '../units/result.ts';

/** A number the map does not give and a stated default stands in for; summed up in one line per kind. */
export type StandIn = Readonly<{ path: string; one: string; many: string; number: string; value: string }>;

/** What is found while a file is read; the readers add to it. */
export type Notes = Readonly<{ problems: Problem[]; assumptions: Problem[]; standIns: StandIn[] }>;

export function newNotes(): Notes {
  return { problems: [], assumptions: [], standIns: [] };
}

/**
 * One line per kind of thing and number, e.g. "12 trees have no height: 8 m assumed".
 * @returns problems whose `path` is the first feature meant
 */
export function summariseStandIns(standIns: readonly StandIn[]): Problem[] {
  const groups = Map.groupBy(standIns, ({ many, number, value }) => JSON.stringify([many, number, value]));
  return [...groups.values()].map(group => {
    const { path, one, many, number, value } = group[0]!;
    const subject = group.length === 1 ? `1 ${one} has` : `${group.length} ${many} have`;
    return { path, message: `${subject} no ${number}: ${value} assumed` };
  });
}
