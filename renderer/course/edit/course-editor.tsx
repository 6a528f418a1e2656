import { useQueryClient } from '@tanstack/react-query';
import { useId, useMemo, useRef, useState } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { addFeatures } from '../../../core/course/edit/edit-features.ts';
import { canRemoveVertex } from '../../../core/course/edit/edit-vertices.ts';
import { placeHole, unplacedLine } from '../../../core/course/edit/place-hole.ts';
import { renumberHole } from '../../../core/course/edit/renumber-holes.ts';
import { shiftPosition } from '../../../core/course/edit/shift-position.ts';
import { verticesOf } from '../../../core/course/edit/vertices.ts';
import { usePlanner } from '../../state/planner.tsx';
import { type DraftMap, deskOf } from './draft-desk.ts';
import { around, DrawMap } from './draw-map.tsx';
import type { Tool } from './editing.ts';
import { HoleChoice } from './hole-choice.tsx';
import { HoleNow } from './hole-now.tsx';
import { indexesOfHole, nextRef, refsOf, teeOf } from './hole-parts.ts';
import { KindBar } from './kind-bar.tsx';
import { LayoutEditor } from './layout-editor.tsx';
import { MapStatus } from './map-status.tsx';
import { ProblemList, thingIndex } from './problem-list.tsx';
import { ThingForm } from './thing-form.tsx';
import { ThingList } from './thing-list.tsx';
import { useDrawing } from './use-drawing.ts';
import { useDrawn } from './use-drawn.ts';
import { WalkForm } from './walk-form.tsx';

/** Room round a hole in the window, and round the cross where there is none yet. */
const MARGIN_m = 12;
const EMPTY_GROUND_m = 60;

/** Draws and edits the map of a course. Every change is kept at once, and taken back like everything else. */
export function CourseEditor({ map }: Readonly<{ map: DraftMap }>) {
  const { name, file } = map;
  const [holeRef, setHoleRef] = useState(() => refsOf(file, null)[0] ?? '1');
  const [reach_m, setReach] = useState<number | null>(2);
  const [framed, setFramed] = useState(0);
  const [tab, setTab] = useState('things');
  const statusId = useId();
  const drawing = useDrawing(map, holeRef, reach_m, () => setTab('things'));
  const { editing, feature, vertex, aim } = drawing;
  const newest = useRef(drawing);
  newest.current = drawing;
  // The same functions for good: what does not change is not drawn again while the hand moves.
  const hand = useMemo(
    () => ({
      choose: (index: number) => newest.current.choose(index),
      begin: (tool: Tool | null) => newest.current.begin(tool),
      finish: () => newest.current.finish(),
      takeBack: () => newest.current.takeBack(),
    }),
    [],
  );
  const drawn = useDrawn(map.courseId, drawing.shown, holeRef);
  const faulty = useMemo(() => new Set((drawn?.problems ?? []).flatMap(({ path }) => thingIndex(path) ?? [])), [drawn]);
  const refs = refsOf(file, drawn);
  const ofHole = indexesOfHole(file, holeRef);
  const showHole = (ref: string) => {
    setHoleRef(ref);
    setFramed(framed + 1);
  };
  const ground =
    ofHole.length > 0
      ? around(file, ofHole, MARGIN_m)
      : [-EMPTY_GROUND_m, EMPTY_GROUND_m].map(shift_m => shiftPosition(editing.cross, shift_m, shift_m));
  return (
    <main className="course-editor" aria-label={`Drawing ${name}`}>
      <section className="draw-side" aria-label="Map">
        <KindBar tool={editing.tool} onTool={hand.begin} onFinish={hand.finish} onTakeBack={hand.takeBack} />
        <DrawMap
          file={file}
          drawing={drawing}
          describedBy={statusId}
          frame={{ name: `${holeRef} ${framed}`, positions: ground }}
        />
        <MapStatus
          id={statusId}
          file={file}
          editing={editing}
          aim={aim}
          teeAt={teeOf(file, drawn, holeRef)}
          reach_m={reach_m}
          onReach={setReach}
          onCross={drawing.moveCross}
          onPlace={() => drawing.place()}
        />
      </section>

      <aside className="draw-panel" aria-label="The map in words">
        <DraftHead map={map} refs={drawn?.holes.map(({ ref }) => ref) ?? []} holeRef={holeRef} />
        <ProblemList problems={drawn?.problems ?? null} onShow={index => drawing.choose(index)} />
        <section className="hole-card" aria-label="The hole as drawn">
          <HoleChoice
            refs={refs}
            shown={holeRef}
            onShow={showHole}
            onRenumber={(from, to) => {
              drawing.commit(`renumber hole ${from} to ${to}`, renumberHole(file, from, to));
              setHoleRef(to);
            }}
          />
          {unplacedLine(file, holeRef) !== undefined && (
            <p className="unplaced">
              <span className="care-word">No place on the map yet.</span>{' '}
              <Button
                className="small-button"
                onPress={() => {
                  drawing.commit(`place hole ${holeRef}`, placeHole(file, holeRef, editing.cross));
                  setFramed(framed + 1);
                }}
              >
                Put its tee at the cross
              </Button>
            </p>
          )}
          {drawn?.hole ? (
            <HoleNow report={drawn.hole.report} />
          ) : (
            <p className="soft">Hole {holeRef} is not whole yet: it takes a tee and a basket.</p>
          )}
        </section>
        <Tabs className="draft-tabs" selectedKey={tab} onSelectionChange={key => setTab(String(key))}>
          <TabList aria-label="Parts of the map" className="tab-list">
            <Tab id="things">Things</Tab>
            <Tab id="layouts">Layouts</Tab>
            <Tab id="walk">Walk a hole</Tab>
          </TabList>
          <TabPanel id="things" className="draft-tab">
            {feature !== null && (
              <ThingForm
                key={editing.chosen}
                feature={feature}
                vertex={vertex === undefined ? null : editing.vertex}
                canRemoveVertex={vertex !== undefined && canRemoveVertex(feature.geometry, vertex.path)}
                drawing={drawing}
              />
            )}
            <ThingList file={file} chosen={editing.chosen} holeRef={holeRef} faulty={faulty} onChoose={hand.choose} />
          </TabPanel>
          <TabPanel id="layouts" className="draft-tab">
            <LayoutEditor file={file} holes={drawn?.holes ?? []} onEdit={drawing.commit} />
          </TabPanel>
          <TabPanel id="walk" className="draft-tab">
            <WalkForm
              file={file}
              firstRef={nextRef(refs)}
              cross={editing.cross}
              onAdd={(features, ref) => {
                drawing.commit(`walk hole ${ref}`, addFeatures(file, ...features));
                drawing.moveCross(verticesOf(features[0]!.geometry)[0]!.position);
                showHole(ref);
                setTab('things');
              }}
            />
          </TabPanel>
        </Tabs>
      </aside>
    </main>
  );
}

type DraftHeadProps = Readonly<{ map: DraftMap; refs: readonly string[]; holeRef: string }>;

/** What becomes of the map: saved, left for later, or given up. */
function DraftHead({ map, refs, holeRef }: DraftHeadProps) {
  const { backend, changeLibrary, say, change } = usePlanner();
  const queries = useQueryClient();
  const desk = deskOf(backend);
  const { courseId, name, file, isCourse, keeping, problems } = map;
  const refreshed = () => queries.invalidateQueries({ queryKey: ['courses'] });
  const save = async () => {
    await desk.settled(courseId);
    const saved = await changeLibrary(
      'The map is kept as a draft: it cannot be saved as a course yet',
      backend.call.saveCourse({ courseId, name, text: JSON.stringify(file) }),
    );
    if (saved === null) return;
    desk.forget(courseId);
    await refreshed();
    say(`${name} saved`);
    change({ courseId, ref: refs.includes(holeRef) ? holeRef : (refs[0] ?? null) });
  };
  const discard = async () => {
    await desk.settled(courseId);
    const gone = await backend.call.discardDraft({ courseId });
    desk.forget(courseId);
    // Nothing was changed: nothing is kept to discard.
    if (gone.ok) await changeLibrary('The draft could not be discarded', Promise.resolve(gone));
    await refreshed();
  };
  const close = async () => {
    await desk.settled(courseId);
    desk.leave();
    await refreshed();
  };
  return (
    <>
      <div className="draft-head">
        <h1>{name}</h1>
        <Button className="button" onPress={() => void save()}>
          Save course
        </Button>
        <Button className="small-button" onPress={() => void close()}>
          Close
        </Button>
        <Button className="small-button danger" onPress={() => void discard()}>
          {isCourse ? 'Discard changes' : 'Discard draft'}
        </Button>
      </div>
      <p className="soft">
        {keeping === 'kept'
          ? 'Every change is kept as a draft until you save.'
          : keeping === 'keeping'
            ? 'Keeping the draft…'
            : `The draft could not be kept: ${problems.map(({ message }) => message).join('; ')}`}
      </p>
    </>
  );
}
