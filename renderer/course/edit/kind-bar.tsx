import { memo } from 'react';
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { type DrawnShape, FEATURE_KINDS, type FeatureKind, KINDS } from '../../../core/course/edit/kinds.ts';
import { positionsFor } from '../../../core/course/edit/make-feature.ts';
import type { Tool } from './editing.ts';
import { TagField } from './tag-field.tsx';

type KindBarProps = Readonly<{
  tool: Tool | null;
  onTool: (tool: Tool | null) => void;
  onFinish: () => void;
  onTakeBack: () => void;
}>;

/** What a kind cannot do without, to begin with; changed in the bar or afterwards. */
const FIRST_TAGS: Readonly<Record<string, string>> = { mando: 'left', min_height: '3' };

const SHAPE_WORDS: Readonly<Record<DrawnShape, string>> = { Point: 'point', LineString: 'line', Polygon: 'area' };

/** Chooses what to draw; while drawing, how far it is and what it needs. */
export const KindBar = memo(function KindBar({ tool, onTool, onFinish, onTakeBack }: KindBarProps) {
  const begin = (kind: FeatureKind) => {
    const must = KINDS[kind].fields.filter(field => field.must);
    const tags = Object.fromEntries(must.map(({ key }) => [key, FIRST_TAGS[key] ?? '']));
    onTool({ kind, shape: KINDS[kind].shapes[0]!, points: [], tags });
  };
  return (
    <div className="kind-bar">
      <ToggleButtonGroup
        aria-label="Draw"
        className="kind-group"
        selectedKeys={tool === null ? [] : [tool.kind]}
        onSelectionChange={keys => {
          const [kind] = keys as Set<FeatureKind>;
          if (kind === undefined) onTool(null);
          else begin(kind);
        }}
      >
        {FEATURE_KINDS.map(kind => (
          <ToggleButton key={kind} id={kind} className="kind-button">
            {KINDS[kind].word}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      {tool === null ? (
        <p className="tool-bar is-idle">Choose what to draw, or a thing on the map to change it.</p>
      ) : (
        <ToolBar tool={tool} onTool={onTool} onFinish={onFinish} onTakeBack={onTakeBack} />
      )}
    </div>
  );
});

function ToolBar({ tool, onTool, onFinish, onTakeBack }: KindBarProps & Readonly<{ tool: Tool }>) {
  const { word, shapes, fields } = KINDS[tool.kind];
  const { least, most } = positionsFor(tool.kind, tool.shape);
  const { length } = tool.points;
  return (
    <section className="tool-bar" aria-label={`Drawing: ${word}`}>
      <strong>{word}</strong>
      {shapes.length > 1 && (
        <label className="inline-field">
          <span>as</span>
          <select
            value={tool.shape}
            onChange={event => onTool({ ...tool, shape: event.target.value as DrawnShape, points: [] })}
          >
            {shapes.map(shape => (
              <option key={shape} value={shape}>
                {SHAPE_WORDS[shape]}
              </option>
            ))}
          </select>
        </label>
      )}
      {fields
        .filter(field => field.must)
        .map(field => (
          <TagField
            key={field.key}
            field={field}
            value={tool.tags[field.key]}
            onValue={value => onTool({ ...tool, tags: { ...tool.tags, [field.key]: String(value ?? '') } })}
          />
        ))}
      <span className="soft">{needWords(length, least, most)}</span>
      {most > 1 && (
        <>
          <Button className="small-button" isDisabled={length < least} onPress={onFinish}>
            Finish
          </Button>
          <Button className="small-button" isDisabled={length === 0} onPress={onTakeBack}>
            Take back
          </Button>
        </>
      )}
      <Button className="small-button" onPress={() => onTool(null)}>
        Stop drawing
      </Button>
    </section>
  );
}

function needWords(have: number, least: number, most: number): string {
  if (most === 1) return 'click, or Enter at the cross';
  if (have < least) return `${have} of at least ${least} points`;
  return `${have} points`;
}
