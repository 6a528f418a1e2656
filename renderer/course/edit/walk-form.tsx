import type { Feature, FeatureCollection, Position } from 'geojson';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../../backend/api/contract/api.ts';
import type { Problem } from '../../../core/units/result.ts';
import { keyed } from '../../frame/keyed.ts';
import { HoleView } from '../../map/hole-view.tsx';
import { usePlanner } from '../../state/planner.tsx';
import { HoleNow } from './hole-now.tsx';
import { readPlace, type WalkTexts, walkedEntry } from './walk-numbers.ts';
import { type RowField, WalkRows } from './walk-rows.tsx';

type WalkFormProps = Readonly<{
  file: FeatureCollection;
  firstRef: string;
  cross: Position;
  onAdd: (features: readonly Feature[], ref: string) => void;
}>;
type Walked = Output<'buildWalkedHole'>;
type Place = 'nowhere' | 'cross' | 'typed';

const PAUSE_ms = 300;
/** A step of a grown walker; to be measured over a known length (common practice, no source). */
const FIRST_PACE_m = '0.75';
const CALM = { speed_mps: 0, from_deg: 0 };
const SIDES = { left: 'left', right: 'right' };

/** A hole from paced or taped numbers, for a course without a map. */
export function WalkForm({ file, firstRef, cross, onAdd }: WalkFormProps) {
  const { settings, backend } = usePlanner();
  const [texts, setTexts] = useState<WalkTexts>(() => ({
    ...{ ref: firstRef, name: '', par: '', unit: 'paces', pace: FIRST_PACE_m, sizes: settings.length },
    ...{ length: '', bearing: '', rise: '', bends: [], ceilings: [], gaps: [], trees: [], out: [] },
  }));
  const [place, setPlace] = useState<Place>(file.features.length === 0 ? 'nowhere' : 'cross');
  const [placeText, setPlaceText] = useState('');
  const [walked, setWalked] = useState<Walked | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isTried, setTried] = useState(false);
  const set = (changes: Partial<WalkTexts>) => setTexts(now => ({ ...now, ...changes }));
  const text = (key: 'ref' | 'name' | 'par' | 'pace' | 'length' | 'bearing' | 'rise', label: string) => (
    <label className="plain-field">
      <span>{label}</span>
      <input type="text" value={texts[key]} onChange={event => set({ [key]: event.target.value })} />
    </label>
  );

  // The draft counts only for where a hole without a place is drawn.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  useEffect(() => {
    let isCurrent = true;
    const timer = setTimeout(async () => {
      const entry = walkedEntry(texts);
      const typed = place === 'typed' ? readPlace(placeText) : null;
      const found = [entry, typed].flatMap(part => (part === null || part.ok ? [] : part.problems));
      if (!entry.ok || typed?.ok === false) {
        setWalked(null);
        return setProblems(found);
      }
      const start = typed?.ok ? typed.value : place === 'cross' ? ([cross[0]!, cross[1]!] as [number, number]) : null;
      const answer = await backend.call.buildWalkedHole({ hole: entry.value, start, text: JSON.stringify(file) });
      if (!isCurrent) return;
      setWalked(answer.ok ? answer.value : null);
      setProblems(answer.ok ? [] : answer.problems);
    }, PAUSE_ms);
    return () => {
      isCurrent = false;
      clearTimeout(timer);
    };
  }, [backend, texts, place, placeText, cross]);

  const along = { paces: 'paces', m: 'm', ft: 'ft' }[texts.unit];
  const { sizes } = texts;
  const field = (key: string, label: string): RowField => ({ key, label });
  return (
    <section className="walk-form" aria-label="Walk a hole">
      <p className="soft">
        Walk from the tee to the basket along the line of play and write down what you meet, counted from the tee. Pace
        out a known length first, such as 20 m, to learn your step.
      </p>
      <div className="field-grid">
        {text('ref', 'Number')}
        {text('name', 'Name')}
        {text('par', 'Par, when known')}
        <label className="plain-field">
          <span>Distances in</span>
          <select value={texts.unit} onChange={event => set({ unit: event.target.value as WalkTexts['unit'] })}>
            <option value="paces">paces</option>
            <option value="m">metres</option>
            <option value="ft">feet</option>
          </select>
        </label>
        {texts.unit === 'paces' && text('pace', 'One pace, m')}
        <label className="plain-field">
          <span>Heights, widths in</span>
          <select value={sizes} onChange={event => set({ sizes: event.target.value as 'm' | 'ft' })}>
            <option value="m">metres</option>
            <option value="ft">feet</option>
          </select>
        </label>
        {text('length', `Length, ${along}`)}
        {text('bearing', 'Direction from the tee')}
        {text('rise', `Rise, ${sizes} (− down)`)}
      </div>
      <WalkRows
        title="Bends"
        add="Add a bend"
        one="bend"
        fields={[
          field('at', `At, ${along}`),
          field('turn', 'Turns, °'),
          { ...field('side', 'to the'), choices: SIDES },
        ]}
        rows={texts.bends}
        onRows={bends => set({ bends })}
      />
      <WalkRows
        title="Low branches over the line"
        add="Add a branch"
        one="branch"
        fields={[
          field('at', `At, ${along}`),
          field('clearance', `Free under it, ${sizes}`),
          field('top', `Top, ${sizes}, if open`),
        ]}
        rows={texts.ceilings}
        onRows={ceilings => set({ ceilings })}
      />
      <WalkRows
        title="Gaps to throw through"
        add="Add a gap"
        one="gap"
        fields={[
          field('at', `At, ${along}`),
          field('width', `Wide, ${sizes}`),
          field('high', `High, ${sizes}, if closed`),
        ]}
        rows={texts.gaps}
        onRows={gaps => set({ gaps })}
      />
      <WalkRows
        title="Trees beside the line"
        add="Add a tree"
        one="tree"
        fields={[
          field('at', `At, ${along}`),
          { ...field('side', 'on the'), choices: SIDES },
          field('aside', `Off the line, ${along}`),
          field('height', `High, ${sizes}`),
          field('branches', `Lowest branch, ${sizes}`),
        ]}
        rows={texts.trees}
        onRows={trees => set({ trees })}
      />
      <WalkRows
        title="Water and out-of-bounds"
        add="Add water or out-of-bounds"
        one="stretch"
        fields={[
          { ...field('what', 'What'), choices: { outOfBounds: 'out-of-bounds', water: 'water' } },
          { ...field('side', 'Where'), choices: { ...SIDES, across: 'across', beyond: 'behind' } },
          field('from', `From, ${along}`),
          field('to', `To, ${along}`),
          field('away', `Off the line, ${along}`),
        ]}
        rows={texts.out}
        onRows={out => set({ out })}
      />
      <div className="field-grid">
        <label className="plain-field">
          <span>Where the tee is</span>
          <select value={place} onChange={event => setPlace(event.target.value as Place)}>
            <option value="cross">at the cross on the map</option>
            <option value="typed">at coordinates</option>
            <option value="nowhere">not known: no place yet</option>
          </select>
        </label>
        {place === 'typed' && (
          <label className="plain-field">
            <span>Latitude, longitude</span>
            <input type="text" value={placeText} onChange={event => setPlaceText(event.target.value)} />
          </label>
        )}
      </div>
      {walked !== null && (
        <section className="walk-preview" aria-label="The hole as walked">
          <HoleView
            map={walked.map}
            drawing={null}
            other={null}
            aimBearing_deg={null}
            onRange={() => {}}
            onAim={null}
            onAimSettled={() => {}}
            wind={CALM}
            windText=""
            isStale={false}
          />
          <HoleNow report={walked.report} />
          <ul className="soft">
            {keyed(walked.notes).map(({ key, item }) => (
              <li key={key}>{item}</li>
            ))}
          </ul>
        </section>
      )}
      {isTried && problems.length > 0 && (
        <ul className="field-problem" aria-live="polite">
          {keyed(problems).map(({ key, item: { path, message } }) => (
            <li key={key}>
              {pathWords(path)}: {message}
            </li>
          ))}
        </ul>
      )}
      <div className="form-buttons">
        <Button
          className="button"
          onPress={() => {
            setTried(true);
            if (walked === null) return;
            onAdd(walked.features as unknown as Feature[], texts.ref.trim());
          }}
        >
          Add the hole
        </Button>
      </div>
    </section>
  );
}

const WORDS: Readonly<Record<string, string>> = {
  bearing_deg: 'Direction',
  'distances.pace_m': 'One pace',
  ref: 'Number',
  start: 'Place',
};

/** "hole.gaps[0].at" as "Gaps 1, at". */
function pathWords(path: string): string {
  const plain = path.replace(/^hole\./, '');
  const known = WORDS[plain];
  if (known !== undefined) return known;
  const text = plain
    .replace(/\[(\d+)\]\.?/g, (_, i: string) => ` ${Number(i) + 1}, `)
    .replace('turn_deg', 'turn')
    .replace(/, $/, '');
  return text.charAt(0).toUpperCase() + text.slice(1);
}
