import type { DropZone, Fairway, Hazard, Island, Mando, OutOfBounds } from './course.ts';
import type { Notes } from './notes.ts';
import { onMap, wrongShape } from './on-map.ts';
import { readMandos } from './read-mandos.ts';
import { readRelief, readUses } from './read-relief.ts';
import { areaOf, centreOf, isClosed, linesOf, lonLat, pointsOf, polygonsOf } from './shapes.ts';
import { label, type TaggedFeature, tagPath, tagText, tagWord } from './tags.ts';

/** What `disc_golf=*` marks beside holes, tees and baskets. Unknown values are noted and left out. */
export function readGolfObjects(
  feature: TaggedFeature,
  notes: Notes,
): (OutOfBounds | Hazard | Island | DropZone | Mando | Fairway)[] {
  const word = tagWord(feature.tags, 'disc_golf');
  switch (word) {
    case undefined:
    case 'hole':
    case 'tee':
    case 'basket':
    case 'pin':
    case 'course':
    // ground that `lost_disc` may speak of
    case 'rough':
      return [];
    case 'mando':
      return readMandos(feature, notes);
    case 'out_of_bounds':
      return readOutOfBounds(feature, notes);
    case 'drop_zone':
      return readDropZones(feature, notes);
    case 'hazard':
    case 'island':
    case 'fairway': {
      const geometry = areaOf(feature);
      if (geometry === undefined) {
        wrongShape(feature, word, 'a Polygon', notes);
        return [];
      }
      if (word === 'hazard') return [{ ...onMap(feature), kind: word, geometry }];
      if (word === 'island') return [{ ...onMap(feature), kind: word, geometry, ...readRelief(feature, notes) }];
      const surface = tagText(feature.tags, 'surface');
      return [{ ...onMap(feature), kind: word, geometry, ...(surface === undefined ? {} : { surface }) }];
    }
    default:
      notes.assumptions.push({
        path: tagPath(feature, 'disc_golf'),
        message: `disc_golf=${tagText(feature.tags, 'disc_golf')} is not known here: left out`,
      });
      return [];
  }
}

/** Areas, and lines beyond which all is out. */
function readOutOfBounds(feature: TaggedFeature, notes: Notes): OutOfBounds[] {
  const area = areaOf(feature);
  const shapes = area === undefined ? linesOf(feature) : [area];
  if (shapes.length === 0)
    wrongShape(feature, 'out_of_bounds', 'a Polygon, or a LineString with the ground beyond it out', notes);
  if (feature.geometry?.type === 'LineString' && isClosed(feature.geometry)) {
    notes.assumptions.push({
      path: feature.path,
      message: `${label(feature, 'out-of-bounds')} is a closed line: the ground inside it is taken as out; if the ground outside is meant, open the line`,
    });
  }
  const relief = readRelief(feature, notes);
  return shapes.map(geometry => ({ ...onMap(feature), kind: 'outOfBounds', geometry, reason: 'tagged', ...relief }));
}

function readDropZones(feature: TaggedFeature, notes: Notes): DropZone[] {
  const area = areaOf(feature);
  const centres = area === undefined ? [] : polygonsOf(area).map(centreOf);
  const positions = [...pointsOf(feature).map(point => lonLat(point.coordinates)), ...centres];
  if (positions.length === 0) wrongShape(feature, 'drop_zone', 'a Point', notes);
  const uses = readUses(feature, notes);
  return positions.map(position => ({ ...onMap(feature), kind: 'dropZone', position, ...uses }));
}
