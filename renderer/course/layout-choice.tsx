import { useCourses } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { playedLayout, withPlayed } from '../state/played-layout.ts';

/** Which layout of the course is planned; nothing to see where there is none. */
export function LayoutChoice({ className }: Readonly<{ className: string }>) {
  const { settings, change, backend } = usePlanner();
  const { courseId, layouts } = settings;
  const names = useCourses().data?.find(line => line.courseId === courseId)?.layouts ?? [];
  if (courseId === null || names.length === 0) return null;
  const choose = async (layout: string | null) => {
    const played = await backend.call.getCourse({ courseId, ...(layout !== null && { layout }) });
    const refs = played.ok ? played.value.holes.map(({ ref }) => ref) : [];
    const ref = settings.ref !== null && refs.includes(settings.ref) ? settings.ref : (refs[0] ?? null);
    change({ layouts: withPlayed(layouts, courseId, layout), ref }, 'change the layout');
  };
  return (
    <label className={className}>
      <span>Layout</span>
      <select
        title={playedLayout(settings, courseId)}
        value={playedLayout(settings, courseId) ?? ''}
        onChange={event => void choose(event.target.value === '' ? null : event.target.value)}
      >
        <option value="">as mapped</option>
        {names.map(name => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
