import { needsRef, ROLE_WORDS } from '../../core/course/import/role.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import type { Answers, Report, RoleChoice } from './use-course-file.ts';

type Item = Report['items'][number];
type PlaceTableProps = Readonly<{ report: Report; answers: Answers; answer: (change: Partial<Answers>) => void }>;

/** What each place and line is: proposed, and the player's to confirm or change. */
export function PlaceTable({ report, answers, answer }: PlaceTableProps) {
  const { items } = report;
  const roles: readonly RoleChoice[] =
    answers.choices.roles ?? items.map(({ index, chosen }) => ({ index, ...chosen }));
  const byIndex = new Map(roles.map(choice => [choice.index, choice]));
  const unsure = items.filter(({ proposal }) => !proposal.sure).length;
  const change = (index: number, part: Partial<RoleChoice>) =>
    answer({
      choices: {
        ...answers.choices,
        roles: roles.map(choice => (choice.index === index ? { ...choice, ...part } : choice)),
      },
      take: null,
    });
  return (
    <ScrollTable label="What each place is">
      <table className="disc-table place-table">
        <caption>
          What each place is, as far as its name says. {unsure > 0 && `Look at the ${unsure} marked “check”. `}Change
          what is wrong; what is left out is not taken in.
        </caption>
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">Is</th>
            <th scope="col">Hole</th>
            <th scope="col">Called</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {items.map(item => (
            <PlaceRow
              key={item.index}
              item={item}
              choice={byIndex.get(item.index) ?? { index: item.index, role: 'leave' }}
              change={part => change(item.index, part)}
            />
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

type PlaceRowProps = Readonly<{ item: Item; choice: RoleChoice; change: (part: Partial<RoleChoice>) => void }>;

function PlaceRow({ item, choice, change }: PlaceRowProps) {
  const { name, folder, shape, proposal } = item;
  const called = name === '' ? `${shape} ${item.index + 1}` : name;
  const spoken = folder === undefined ? called : `${called} in ${folder}`;
  const isAsProposed = choice.role === proposal.role && (choice.ref ?? '') === (proposal.ref ?? '');
  const lacksRef = needsRef(choice.role) && (choice.ref ?? '').trim() === '';
  return (
    <tr data-left={choice.role === 'leave' || undefined}>
      <th scope="row">
        {called}
        {folder !== undefined && <span className="soft"> in {folder}</span>}
      </th>
      <td>
        <select
          aria-label={`What ${spoken} is`}
          value={choice.role}
          onChange={event => change({ role: event.target.value as RoleChoice['role'] })}
        >
          {item.roles.map(role => (
            <option key={role} value={role}>
              {ROLE_WORDS[role]}
            </option>
          ))}
        </select>
      </td>
      <td>
        <input
          type="text"
          className="ref-input"
          aria-label={`Hole of ${spoken}`}
          aria-invalid={lacksRef || undefined}
          maxLength={10}
          value={choice.ref ?? ''}
          onChange={event => change({ ref: event.target.value })}
        />
      </td>
      <td>
        <input
          type="text"
          aria-label={`Name of ${spoken}`}
          maxLength={120}
          value={choice.label ?? ''}
          onChange={event => change({ label: event.target.value })}
        />
      </td>
      <td>
        {isAsProposed ? (
          <>
            {!proposal.sure && <span className="care-word">check: </span>}
            {proposal.why}
          </>
        ) : (
          'as you said'
        )}
      </td>
    </tr>
  );
}
