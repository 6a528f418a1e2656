import type { Settings } from '../../backend/api/contract/settings.ts';
import { TypedField } from '../shell/typed-field.tsx';
import { usePlanner } from '../state/planner.tsx';

const ATTITUDES: Record<Settings['attitude'], string> = {
  even: 'fewest throws',
  guard: 'no bad holes',
  push: 'a target score',
};
const HANDS = { both: 'either hand', backhand: 'backhand only', forehand: 'forehand only' } as const;
const DISCS = { all: 'every disc', slow: 'putters and midranges', putters: 'putters only' } as const;
const CLASSES_OF = { all: undefined, slow: ['putter', 'midrange'], putters: ['putter'] } as const;

/** What the round is played for, and with what: the plan changes with it. */
export function RoundAim({ par }: Readonly<{ par: number }>) {
  const { settings, change } = usePlanner();
  const { attitude, target, limits } = settings;
  const hand = limits.hands?.length === 1 ? limits.hands[0]! : 'both';
  const discs = limits.classes === undefined ? 'all' : limits.classes.length === 1 ? 'putters' : 'slow';
  const limit = (next: Settings['limits']) =>
    change(
      { limits: Object.fromEntries(Object.entries(next).filter(([, value]) => value !== undefined)) },
      'change what is thrown',
    );
  return (
    <details className="round-aim">
      <summary>
        Play for{' '}
        <span className="soft">
          {[ATTITUDES[attitude], hand === 'both' ? null : HANDS[hand], discs === 'all' ? null : DISCS[discs]]
            .filter(Boolean)
            .join(', ')}
        </span>
      </summary>
      <div className="day-fields">
        <label className="plain-field">
          <span>Play for</span>
          <select
            value={attitude}
            onChange={event => {
              const next = event.target.value as Settings['attitude'];
              change({ attitude: next, target: next === 'push' ? (target ?? par) : target }, 'change what to play for');
            }}
          >
            {Object.entries(ATTITUDES).map(([name, words]) => (
              <option key={name} value={name}>
                {words}
              </option>
            ))}
          </select>
        </label>
        {attitude === 'push' && (
          <TypedField
            label="Target, throws"
            text={String(target ?? par)}
            read={text => {
              const value = Number(text);
              return Number.isInteger(value) && value >= 1 && value <= 500
                ? { ok: true, value }
                : {
                    ok: false,
                    problems: [{ path: 'target', message: 'write a whole number of throws for the round' }],
                  };
            }}
            onValue={value => change({ target: value }, 'change the target')}
          />
        )}
        <label className="plain-field">
          <span>Throw with</span>
          <select
            value={hand}
            onChange={event => {
              const next = event.target.value as keyof typeof HANDS;
              limit({ ...limits, hands: next === 'both' ? undefined : [next] });
            }}
          >
            {Object.entries(HANDS).map(([name, words]) => (
              <option key={name} value={name}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label className="plain-field">
          <span>Carry</span>
          <select
            value={discs}
            onChange={event => {
              const classes = CLASSES_OF[event.target.value as keyof typeof CLASSES_OF];
              limit({ ...limits, classes: classes === undefined ? undefined : [...classes] });
            }}
          >
            {Object.entries(DISCS).map(([name, words]) => (
              <option key={name} value={name}>
                {words}
              </option>
            ))}
          </select>
        </label>
      </div>
    </details>
  );
}
