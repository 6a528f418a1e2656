import { Button } from 'react-aria-components';
import { useCourses, usePlayer } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import type { AskPractice } from '../state/practice.ts';
import type { ChangeForm, DiscClass, Hand, LimitKind, PracticeForm, Shape } from '../state/practice-form.ts';
import { windOf } from '../wind/day-words.ts';
import { useUnits } from '../words/use-units.ts';
import { compassPoint } from '../words/wind-words.ts';

const KINDS: Readonly<Record<LimitKind, string>> = {
  putters: 'Putters only',
  disc: 'One disc',
  neutral: 'Neutral discs only',
  forehand: 'Forehand only',
  own: 'Your own limit',
};
const CLASSES: Readonly<Record<DiscClass, string>> = {
  putter: 'Putters',
  midrange: 'Midranges',
  fairway: 'Fairway drivers',
  control: 'Control drivers',
  distance: 'Distance drivers',
};
const HANDS: Readonly<Record<Hand, string>> = { backhand: 'Backhand', forehand: 'Forehand' };
const SHAPES: Readonly<Record<Shape, string>> = { hyzer: 'Hyzer', flat: 'Flat', anhyzer: 'Anhyzer' };
const ABOUT: Readonly<Record<LimitKind, string>> = {
  putters: 'Clean releases and touch; a disc that forgives little.',
  disc: 'Every line with the same disc: height, power and angle have to do it.',
  neutral: 'Over-stable discs hide faults; a neutral disc shows them (common practice).',
  forehand: 'The hand you use less. It loads elbow and shoulder: keep it short.',
  own: 'Any set of discs, hands and lines.',
};

type FormProps = Readonly<{
  form: PracticeForm;
  change: ChangeForm;
  asking: AskPractice;
  canAsk: boolean;
}>;

/** Which limit, on which courses, how many holes. */
export function PracticeFormPanel({ form, change, asking, canAsk }: FormProps) {
  const { settings } = usePlanner();
  const player = usePlayer(settings.playerId);
  const courses = useCourses();
  const throwing = player.data?.discs.filter(({ role }) => role === 'throwing') ?? [];
  const isRunning = asking.state?.state === 'running';
  return (
    <form
      className="library-list practice-form"
      aria-label="The practice round you want"
      onSubmit={event => {
        event.preventDefault();
        if (!isRunning && canAsk) asking.ask();
      }}
    >
      <h1>Practice round</h1>
      <fieldset>
        <legend>The limit</legend>
        {(Object.keys(KINDS) as LimitKind[]).map(kind => (
          <label key={kind} className="pick">
            <input
              type="radio"
              name="practice-limit"
              checked={form.kind === kind}
              onChange={() => change(() => ({ kind }))}
            />
            <span>{KINDS[kind]}</span>
          </label>
        ))}
        <p className="soft">{ABOUT[form.kind]}</p>
      </fieldset>
      {form.kind === 'disc' && (
        <label className="plain-field">
          <span>Which disc</span>
          <select
            value={form.discId}
            onChange={event => {
              const discId = event.target.value;
              change(() => ({ discId }));
            }}
          >
            {throwing.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {form.kind === 'own' && (
        <>
          <Picks
            legend="Discs"
            options={CLASSES}
            picked={form.classes}
            onPick={(one, isIn) => change(now => ({ classes: toggled(now.classes, one, isIn) }))}
          />
          <Picks
            legend="Hands"
            options={HANDS}
            picked={form.hands}
            onPick={(one, isIn) => change(now => ({ hands: toggled(now.hands, one, isIn) }))}
          />
          <Picks
            legend="Lines"
            options={SHAPES}
            picked={form.shapes}
            onPick={(one, isIn) => change(now => ({ shapes: toggled(now.shapes, one, isIn) }))}
          />
        </>
      )}
      <fieldset>
        <legend>Courses to look through</legend>
        {courses.data?.map(({ courseId, name }) => (
          <label key={courseId} className="pick">
            <input
              type="checkbox"
              checked={!form.without.includes(courseId)}
              onChange={event => {
                const isOut = !event.target.checked;
                change(now => ({ without: toggled(now.without, courseId, isOut) }));
              }}
            />
            <span>{name}</span>
          </label>
        ))}
      </fieldset>
      <div className="practice-numbers">
        <label className="plain-field">
          <span>Most holes</span>
          <select
            value={form.holes}
            onChange={event => {
              const holes = Number(event.target.value);
              change(() => ({ holes }));
            }}
          >
            {[2, 3, 6, 9, 12, 18].map(holes => (
              <option key={holes} value={holes}>
                {holes}
              </option>
            ))}
          </select>
        </label>
        <label className="plain-field">
          <span>Plan on</span>
          <select
            value={form.rounds}
            onChange={event => {
              const rounds = Number(event.target.value);
              change(() => ({ rounds }));
            }}
          >
            <option value={1}>the best course</option>
            <option value={2}>the best two</option>
            <option value={3}>the best three</option>
          </select>
        </label>
      </div>
      <label className="pick">
        <input
          type="checkbox"
          checked={form.compare}
          onChange={event => {
            const compare = event.target.checked;
            change(() => ({ compare }));
          }}
        />
        <span>Also say what the limit costs (takes longer)</span>
      </label>
      <DayLine />
      {isRunning ? (
        <Button className="small-button" onPress={asking.cancel}>
          Stop looking
        </Button>
      ) : (
        <Button type="submit" className="button" isDisabled={!canAsk}>
          Find a practice round
        </Button>
      )}
      {!canAsk && !isRunning && (
        <p className="field-problem">
          Pick at least one disc, hand, line and course; the player needs a disc to throw.
        </p>
      )}
    </form>
  );
}

type PicksProps<T extends string> = Readonly<{
  legend: string;
  options: Readonly<Record<T, string>>;
  picked: readonly T[];
  onPick: (one: T, isIn: boolean) => void;
}>;

function Picks<T extends string>({ legend, options, picked, onPick }: PicksProps<T>) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      {(Object.entries(options) as [T, string][]).map(([name, words]) => (
        <label key={name} className="pick">
          <input
            type="checkbox"
            checked={picked.includes(name)}
            onChange={event => onPick(name, event.target.checked)}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

function toggled<T>(all: readonly T[], one: T, isIn: boolean): readonly T[] {
  return isIn ? [...all.filter(other => other !== one), one] : all.filter(other => other !== one);
}

/** The day the round is planned for; it is set where the round is. */
function DayLine() {
  const { settings } = usePlanner();
  const units = useUnits();
  const { speed_mps, from_deg } = windOf(settings.day);
  const wind =
    settings.day.metar !== undefined && settings.day.wind === undefined
      ? 'the weather report'
      : speed_mps === 0
        ? 'calm air'
        : `${units.speed(speed_mps)} from ${compassPoint(from_deg)}`;
  return (
    <p className="soft">
      In {wind}, as set under <a href="#round">Round</a>
      {settings.isByTeeTime && ' as the one wind: a practice round does not follow the winds by tee time'}.
    </p>
  );
}
