import { ImportButton } from './import-button.tsx';

/** What to do when there is no course or no player to plan with. */
export function FirstSteps() {
  return (
    <main className="first-steps">
      <h1>Two things make a plan</h1>
      <ol>
        <li>
          <h2>A course</h2>
          <p>
            A map with tees, baskets, trees and water: GeoJSON, an OpenStreetMap extract, or waypoints and places saved
            as GPX or KML. The more trees and low branches it holds, the better the plan.
          </p>
          <ImportButton kind="course" words="Import a course" />
        </li>
        <li>
          <h2>Your throws</h2>
          <p>
            A player file: your discs with their numbers, and throws you measured. Ten throws of one midrange are a good
            start; the other discs are worked out from them.
          </p>
          <ImportButton kind="player" words="Import a player" />
        </li>
      </ol>
      <p className="soft">You can also drop the files anywhere on this window.</p>
    </main>
  );
}
