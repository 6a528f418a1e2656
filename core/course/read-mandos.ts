import type { Mando, MandoSide } from './course.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { onMap, wrongShape } from './on-map.ts';
import { linesOf, pointsOf } from './shapes.ts';
import { checkAbove, lengthTag } from './tag-number.ts';
import { label, type TaggedFeature, tagPath, tagText, tagWord } from './tags.ts';

const sides = ['left', 'right', 'above', 'below'] as const satisfies readonly MandoSide[];

/** `disc_golf=mando`: a thing to pass on the side that `mando` names. */
export function readMandos(feature: TaggedFeature, notes: Notes): Mando[] {
  const shapes = [...pointsOf(feature), ...linesOf(feature)];
  if (shapes.length === 0) wrongShape(feature, 'mando', 'a Point or LineString', notes);
  const side = readSide(feature, notes);
  const height = lengthTag(feature, 'height', limits.height_m, notes);
  const underside = lengthTag(feature, 'min_height', limits.height_m, notes);
  checkAbove(feature, underside, height, notes);
  if (side === undefined) return [];
  // What is passed above is passed over its top; what is passed below, under its underside.
  const height_m = side === 'below' ? (underside ?? height) : height;
  if ((side === 'above' || side === 'below') && height_m === undefined) {
    if (!feature.tags.has('height') && !feature.tags.has('min_height')) {
      notes.problems.push({
        path: feature.path,
        message: `${label(feature, 'mando')} with mando=${side} has no height: add the height to pass ${side}, in metres`,
      });
    }
    return [];
  }
  return shapes.map(geometry => ({
    ...onMap(feature),
    kind: 'mando',
    geometry,
    side,
    ...(height_m === undefined ? {} : { height_m }),
  }));
}

function readSide(feature: TaggedFeature, notes: Notes): MandoSide | undefined {
  const word = tagWord(feature.tags, 'mando');
  const side = sides.find(name => name === word);
  if (side !== undefined) return side;
  const what = label(feature, 'mando');
  const choices = 'mando=left, right, above or below (the side a throw must pass, seen from the tee)';
  notes.problems.push(
    word === undefined
      ? { path: feature.path, message: `${what} does not say on which side to pass: add ${choices}` }
      : {
          path: tagPath(feature, 'mando'),
          message: `${what}: "${tagText(feature.tags, 'mando')}" is not a side: write ${choices}`,
        },
  );
  return undefined;
}
