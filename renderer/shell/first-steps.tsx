import { Button } from 'react-aria-components';
import { useCourses, usePlayers } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { ImportButton } from './import-button.tsx';
import { goTo } from './use-place.ts';

/** What to do when there is no course or no player to plan with: bring a file, or begin without one. */
export function FirstSteps() {
  const { settings } = usePlanner();
  const course = useCourses().data?.find(line => line.courseId === settings.courseId);
  const player = usePlayers().data?.find(line => line.playerId === settings.playerId);
  return (
    <main className="first-steps">
      <h1>Two things make a plan</h1>
      <ol>
        <li>
          <h2>A course</h2>
          {course === undefined ? (
            <>
              <p>
                A map with tees, baskets, trees and water: GeoJSON, an OpenStreetMap extract, or waypoints and places
                saved as GPX or KML. The more trees and low branches it holds, the better the plan.
              </p>
              <ImportButton kind="course" words="Import a course" />
              <p>No file? Draw the holes yourself, or pace a hole and write down its numbers.</p>
              <Button className="small-button" onPress={() => goTo('course')}>
                Draw or walk a course
              </Button>
            </>
          ) : (
            <p>{course.name} is here.</p>
          )}
        </li>
        <li>
          <h2>Your throws</h2>
          {player === undefined ? (
            <>
              <p>
                A player file: your discs with their numbers, and throws you measured. Ten throws of one midrange are a
                good start; the other discs are worked out from them.
              </p>
              <ImportButton kind="player" words="Import a player" />
              <p>No file? One disc with its numbers and one measured throw are enough to begin.</p>
              <Button className="small-button" onPress={() => goTo('fieldwork')}>
                Start a new player
              </Button>
            </>
          ) : (
            <p>{player.name} is here.</p>
          )}
        </li>
      </ol>
      <p className="soft">You can also drop the files anywhere on this window.</p>
    </main>
  );
}
