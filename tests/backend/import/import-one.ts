import { readFileSync } from 'node:fs';
import { importedCourse } from '../../../backend/library/imported-course.ts';

/* One file in a process of its own: node import-one.ts FILE. Says how it ended and what it took at most. */
const answer = importedCourse(readFileSync(process.argv[2]!), 'hostile', { roles: [] });
const peak_MB = process.resourceUsage().maxRSS / 1000;
console.log(JSON.stringify({ ok: answer.ok, peak_MB, problems: answer.ok ? [] : answer.problems.slice(0, 3) }));
