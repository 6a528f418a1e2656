import type { Command } from 'commander';

/** Elevation models beside the course file. */
export type GroundOptions = Readonly<{ terrain?: string; surface?: string }>;

export function addGroundOptions(command: Command): Command {
  return command
    .option(
      '--terrain <file>',
      'elevation model (GeoTIFF) of the ground; where it covers a hole it replaces mapped heights',
    )
    .option(
      '--surface <file>',
      'with --terrain: model with tree tops, for the heights of trees and woods that are not mapped',
    );
}
