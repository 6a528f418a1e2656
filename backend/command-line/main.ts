#!/usr/bin/env node
import { enableCompileCache } from 'node:module';

// Starts in half the time from the second run on; what it keeps lies in the system's temporary folder.
enableCompileCache();
const [{ run }, { processTerminal }] = await Promise.all([import('./run.ts'), import('./terminal.ts')]);

// Set, not exited with, so that everything written to a pipe gets out first.
process.exitCode = await run(process.argv.slice(2), processTerminal());
