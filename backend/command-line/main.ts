#!/usr/bin/env node
import { run } from './run.ts';
import { processTerminal } from './terminal.ts';

// Set, not exited with, so that everything written to a pipe gets out first.
process.exitCode = await run(process.argv.slice(2), processTerminal());
