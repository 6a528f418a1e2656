import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';

const asFile = (name: string, value: unknown) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(value)),
});

/** Two open holes of 80 m. */
export const tinyCourseFile = () => asFile('tiny-links.geojson', tinyCourse());
export const tinyPlayerFile = () => asFile('tiny-player.json', tinyPlayer());
/** No course at all: a text file with a course's name. */
export const brokenCourseFile = () => ({
  name: 'broken.geojson',
  mimeType: 'application/json',
  buffer: Buffer.from('{"type":'),
});
