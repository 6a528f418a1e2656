import { mkdirSync, writeFileSync } from 'node:fs';
import { schemaFiles } from './schema-files.ts';

const folder = new URL('../../docs/schemas/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const { file, text } of schemaFiles()) writeFileSync(new URL(file, folder), text);
