// Writes the sample courses and players beside this folder: node sample-courses/generate/write-samples.ts
import { writeFileSync } from 'node:fs';
import { samples } from './samples.ts';

for (const { file, text } of samples()) writeFileSync(new URL(`../${file}`, import.meta.url), text);
