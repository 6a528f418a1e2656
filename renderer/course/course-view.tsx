import { Button } from 'react-aria-components';
import { countWords } from '../../core/course/count-words.ts';
import { inUnits } from '../../core/sheet/words/lengths.ts';
import { BaseMapPanel } from '../base-map/base-map-panel.tsx';
import { offerFile } from '../shell/files.ts';
import { ImportButton } from '../shell/import-button.tsx';
import { RenameField } from '../shell/rename-field.tsx';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { goTo } from '../shell/use-place.ts';
import { useCourseMap, useCourses, useMappedCourse } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { TerrainPanel } from '../terrain/terrain-panel.tsx';
import { useUnits } from '../words/use-units.ts';
import { CourseMap } from './course-map.tsx';
import { CourseEditor } from './edit/course-editor.tsx';
import { DrawYourOwn, EditMapButton, useOnTable } from './edit/on-table.tsx';
import { LayoutChoice } from './layout-choice.tsx';
import { ShareButton } from './share-button.tsx';

/** The courses, or the map of one on the drawing table. */
export function CourseView() {
  const map = useOnTable();
  return map === null ? <CourseLibrary /> : <CourseEditor key={map.courseId} map={map} />;
}

/** Which courses there are, and what the map of one says and leaves open. */
function CourseLibrary() {
  const { settings, change, changeLibrary, backend, tell } = usePlanner();
  const { courseId } = settings;
  const units = useUnits();
  const courses = useCourses();
  const course = useMappedCourse(courseId);
  const map = useCourseMap(courseId);
  const choose = async (id: string) => {
    const read = await backend.call.getCourse({ courseId: id });
    change({ courseId: id, ref: read.ok ? (read.value.holes[0]?.ref ?? null) : null }, 'change the course');
  };
  return (
    <main className="library-view">
      <section className="library-list" aria-label="Courses">
        <h1>Courses</h1>
        <ul>
          {courses.data?.map(line => (
            <li key={line.courseId}>
              <Button
                className="library-item"
                aria-pressed={line.courseId === courseId}
                data-chosen={line.courseId === courseId || undefined}
                onPress={() => void choose(line.courseId)}
              >
                <strong>{line.name}</strong>
                <span>
                  {line.holes} holes, par {line.par}, {units.length(line.playLength_m, 0)}
                  {line.sample ? ', sample' : ''}
                </span>
              </Button>
            </li>
          ))}
        </ul>
        <ImportButton kind="course" words="Import a course" />
        <p className="soft">
          GeoJSON, an OpenStreetMap extract, GPX waypoints or KML places. You see what it makes before it is added. You
          can drop it on the window.
        </p>
        <DrawYourOwn />
      </section>

      {course.data === undefined || courseId === null ? (
        <section className="library-detail empty-state" aria-label="The course">
          <h2>No course yet</h2>
          <p>
            Import a file, or press “Draw a new course”: its holes can be drawn on the map, or paced and entered as
            numbers. Tees and baskets are enough to start; trees, low branches and water make the plan honest.
          </p>
        </section>
      ) : (
        <section className="library-detail" aria-label="The course">
          <div className="detail-head">
            <RenameField
              key={courseId}
              label="Course"
              name={course.data.name}
              onRename={name =>
                void changeLibrary('The course could not be renamed', backend.call.renameCourse({ courseId, name }))
              }
            />
            <EditMapButton courseId={courseId} />
            <LayoutChoice className="inline-field" />
            <Button
              className="small-button"
              onPress={() =>
                void backend.call.exportCourse({ courseId }).then(async answer => {
                  const kept = answer.ok ? await offerFile(backend, answer.value) : answer;
                  if (!kept.ok) tell({ what: 'The course could not be written', problems: kept.problems });
                })
              }
            >
              Export
            </Button>
            <ShareButton courseId={courseId} />
            <Button
              className="small-button danger"
              onPress={() =>
                void changeLibrary('The course could not be deleted', backend.call.removeCourse({ courseId }))
              }
            >
              Delete course
            </Button>
          </div>
          <p className="soft">
            Mapped: {course.data.counts.map(countWords).join(', ')}.
            {course.data.notMapped.length > 0 && ` Not mapped, so not known: ${course.data.notMapped.join(', ')}.`}
          </p>
          {map.data !== undefined && <CourseMap map={map.data} />}
          <TerrainPanel key={`terrain ${courseId}`} courseId={courseId} />
          <BaseMapPanel />
          <ScrollTable label="Holes">
            <table className="disc-table">
              <caption>Holes</caption>
              <thead>
                <tr>
                  <th scope="col">Hole</th>
                  <th scope="col">Par</th>
                  <th scope="col">Straight</th>
                  <th scope="col">Line of play</th>
                  <th scope="col">Rise</th>
                  <th scope="col">
                    <span className="unseen">Show</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {course.data.holes.map(hole => (
                  <tr key={hole.ref}>
                    <th scope="row">
                      {hole.ref} <span className="soft">{hole.name}</span>
                      {!hole.isPlaced && <span className="care-word"> no place on the map</span>}
                    </th>
                    <td>
                      {hole.par}
                      {hole.parSource === 'derived' && <span className="soft"> by length</span>}
                    </td>
                    <td>{units.length(hole.length_m, 0)}</td>
                    <td>{units.length(hole.playLength_m, 0)}</td>
                    <td>{hole.rise_m === null ? 'not mapped' : units.length(hole.rise_m).replace('-', '−')}</td>
                    <td>
                      <Button
                        className="small-button"
                        aria-label={`Plan of hole ${hole.ref}`}
                        onPress={() => {
                          change({ ref: hole.ref });
                          goTo('round');
                        }}
                      >
                        Plan
                      </Button>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollTable>
          {course.data.assumptions.length > 0 && (
            <details className="assumptions">
              <summary>{course.data.assumptions.length} things the map leaves open and the plan assumes</summary>
              <ul>
                {course.data.assumptions.map(problem => (
                  <li key={problem.path + problem.message}>
                    <code>{problem.path}</code> {inUnits(problem.message, settings)}
                  </li>
                ))}
              </ul>
            </details>
          )}
        </section>
      )}
    </main>
  );
}
