import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';
import { type RunningApp, startApp } from './start-app.ts';

const WIND = { wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } };

/** The app with a course of two holes and a player of three discs chosen, so that planning takes no time. */
export async function startTinyApp(): Promise<RunningApp> {
  const app = await startApp();
  const answered = async (method: string, input: unknown) => {
    const answer = await app.call(method, input);
    if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
    return answer.value as Record<string, string>;
  };
  const { courseId } = await answered('importCourse', {
    fileName: 'tiny-links.geojson',
    text: JSON.stringify(tinyCourse()),
  });
  const { playerId } = await answered('importPlayer', {
    fileName: 'tiny-player.json',
    text: JSON.stringify(tinyPlayer()),
  });
  await answered('setSettings', { change: { courseId, playerId, ref: '1', day: WIND } });
  return app;
}
