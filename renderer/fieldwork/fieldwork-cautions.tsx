import { LIGHTNING, PEOPLE } from '../../core/air/cautions.ts';

/** What can hurt somebody on a practice field; defers to whoever runs the field and to licensed practice. */
const OWN = [
  {
    head: 'People on the field',
    text: 'A field is seldom yours alone. Look where a slip could fly, a full throw to either side and beyond the farthest one, before every throw. Walk out together, and throw again only when everybody is back behind the line.',
    source: 'common practice, no source',
  },
  {
    head: 'Your arm and back',
    text: 'Warm up, begin at half power, and let the number of throws grow slowly from week to week; rest between hard sets. Stop at the first pain in elbow, shoulder, back or knee. Forehand throws load the elbow more: keep their share small at first. For pain that stays, see a doctor or physiotherapist; this app is neither.',
    source:
      'Nelson et al., Orthopaedic Journal of Sports Medicine 3(6), 2015 (elbow, shoulder, back and knee hurt most; forehand throwers’ elbows more often); the advice is common practice',
  },
  {
    head: 'The place',
    text: 'Ask whoever runs the field, and follow the signs: local rules come before any plan. Do not climb fences or wade for a disc.',
    source: 'common practice, no source',
  },
  {
    head: 'Rollers and overhead throws',
    text: 'A roller runs on far beyond where you look, and bends: keep the ground clear along its whole way. Overhead throws load shoulder and elbow: a few soft ones first, few in all, and none on a sore arm.',
    source: 'common practice, no source',
  },
] as const;

export function FieldworkCautions() {
  return (
    <section className="fieldwork-cautions" aria-label="Care on the field">
      <h2>Before you throw</h2>
      <dl>
        {[
          OWN[0],
          { head: 'Before every throw', ...PEOPLE },
          OWN[1],
          OWN[3],
          { head: 'Thunder', ...LIGHTNING },
          OWN[2],
        ].map(({ head, text, source }) => (
          <div key={head} className="caution-item">
            <dt>{head}</dt>
            <dd>
              {text} <span className="soft">({source})</span>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
