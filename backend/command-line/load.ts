import { basename } from 'node:path';
import type { Course } from '../../core/course/course.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { type PlayerFile, parsePlayerText } from '../../core/player/player-file.ts';
import type { Result } from '../../core/units/result.ts';
import { readTextFile } from '../files/read-text-file.ts';

export function loadCourse(file: string): Result<Course> {
  const text = readTextFile(file);
  return text.ok ? parseCourseText(text.value, basename(file)) : text;
}

export function loadPlayer(file: string): Result<PlayerFile> {
  const text = readTextFile(file);
  return text.ok ? parsePlayerText(text.value) : text;
}
