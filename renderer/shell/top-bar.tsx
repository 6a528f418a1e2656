import { Button } from 'react-aria-components';
import type { Settings } from '../../backend/api/contract/settings.ts';
import { LayoutChoice } from '../course/layout-choice.tsx';
import { useCourses, usePlayers } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { AboutButton } from './about.tsx';
import { PLACE_GROUPS, PLACES, type Place } from './places.ts';
import { Popout } from './popout.tsx';

/** Where you are, whose bag and which course, undo, and how things are written. */
export function TopBar({ place }: Readonly<{ place: Place }>) {
  const { settings, change, history, undo, redo, backend } = usePlanner();
  const courses = useCourses();
  const players = usePlayers();
  const undoWhat = history.past.at(-1)?.what;
  const redoWhat = history.future[0]?.what;
  const chooseCourse = async (courseId: string) => {
    const course = await backend.call.getCourse({ courseId });
    change({ courseId, ref: course.ok ? (course.value.holes[0]?.ref ?? null) : null }, 'change the course');
  };
  return (
    <header className="top-bar">
      <span className="brand">
        <svg viewBox="0 0 32 20" aria-hidden="true">
          <path className="brand-ground" d="M2 18H30" />
          <path className="brand-flight" d="M2 17C10 14 22 10 27 2" />
        </svg>
        <span className="brand-name">Roundwright</span>
      </span>
      <nav aria-label="Parts of the app" className="places">
        {Object.entries(PLACE_GROUPS).map(([group, names]) => (
          <span key={group} className="place-group">
            {names.map(name => (
              <a key={name} href={`#${name}`} aria-current={name === place ? 'page' : undefined}>
                {PLACES[name]}
              </a>
            ))}
          </span>
        ))}
      </nav>
      <label className="top-field">
        <span>Course</span>
        <select
          title={nameOf(courses.data, line => line.courseId === settings.courseId)}
          value={settings.courseId ?? ''}
          onChange={event => void chooseCourse(event.target.value)}
        >
          {settings.courseId === null && <option value="">none</option>}
          {courses.data?.map(course => (
            <option key={course.courseId} value={course.courseId}>
              {course.name}
            </option>
          ))}
        </select>
      </label>
      <LayoutChoice className="top-field" />
      <label className="top-field who">
        <span>Player</span>
        <select
          title={nameOf(players.data, line => line.playerId === settings.playerId)}
          value={settings.playerId ?? ''}
          onChange={event => change({ playerId: event.target.value }, 'change the player')}
        >
          {settings.playerId === null && <option value="">none</option>}
          {players.data?.map(player => (
            <option key={player.playerId} value={player.playerId}>
              {player.name}
            </option>
          ))}
        </select>
      </label>
      <span className="spring" />
      <fieldset className="top-group" aria-label="Undo">
        <Button
          className="small-button"
          isDisabled={undoWhat === undefined}
          onPress={undo}
          aria-label={undoWhat === undefined ? 'Undo' : `Undo: ${undoWhat}`}
        >
          Undo
        </Button>
        <Button
          className="small-button"
          isDisabled={redoWhat === undefined}
          onPress={redo}
          aria-label={redoWhat === undefined ? 'Redo' : `Redo: ${redoWhat}`}
        >
          Redo
        </Button>
      </fieldset>
      <Popout words="Units, light" className="reading">
        <div className="reading-fields">
          <Choice
            label="Lengths"
            value={settings.length}
            options={{ m: 'metres', ft: 'feet' }}
            onPick={length => change({ length })}
          />
          <Choice
            label="Wind"
            value={settings.speed}
            options={{ mps: 'm/s', kmh: 'km/h', mph: 'mph', kn: 'knots' }}
            onPick={speed => change({ speed })}
          />
          <Choice
            label="Temperature"
            value={settings.temperature}
            options={{ C: '°C', F: '°F' }}
            onPick={temperature => change({ temperature })}
          />
          <Choice
            label="Light"
            value={settings.theme}
            options={
              { system: 'as the system', light: 'light', dark: 'dark' } satisfies Record<Settings['theme'], string>
            }
            onPick={theme => change({ theme })}
          />
          <AboutButton />
        </div>
      </Popout>
    </header>
  );
}

/** The whole of a name the field may be too narrow for. */
const nameOf = <T extends Readonly<{ name: string }>>(
  lines: readonly T[] | undefined,
  isChosen: (line: T) => boolean,
) => lines?.find(isChosen)?.name;

type ChoiceProps<T extends string> = Readonly<{
  label: string;
  value: T;
  options: Record<T, string>;
  onPick: (value: T) => void;
}>;

function Choice<T extends string>({ label, value, options, onPick }: ChoiceProps<T>) {
  return (
    <label className="plain-field">
      <span>{label}</span>
      <select value={value} onChange={event => onPick(event.target.value as T)}>
        {(Object.entries(options) as [T, string][]).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
