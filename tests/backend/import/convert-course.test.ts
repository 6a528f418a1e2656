import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { type ConvertedCourse, convertCourse, type ImportChoices } from '../../../backend/import/convert-course.ts';
import { ImportReportSchema } from '../../../backend/import/import-report.ts';
import { reportImport } from '../../../backend/import/report-import.ts';
import { lineLength_m } from '../../../core/course/ground-distance.ts';
import { taken } from '../taken.ts';
import { FIXTURES, fixture, fixtureText } from './fixture.ts';

const utf8 = (text: string) => strToU8(text);
const converted = (bytes: Uint8Array, name = 'a', choices: ImportChoices = {}): ConvertedCourse =>
  taken(convertCourse(bytes, name, choices));
const courseOf = (bytes: Uint8Array, name = 'a', choices: ImportChoices = {}) =>
  taken(converted(bytes, name, choices).course).course;
const problemsOf = (bytes: Uint8Array) => {
  const read = convertCourse(bytes, 'a');
  if (!read.ok) return read.problems;
  if (!read.value.course.ok) return read.value.course.problems;
  throw new Error('it was taken');
};
const gpx = (inside: string) =>
  utf8(`<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">${inside}</gpx>`);
const kml = (inside: string) =>
  utf8(`<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inside}</Document></kml>`);
const osm = (inside: string) => utf8(`<?xml version="1.0"?><osm version="0.6">${inside}</osm>`);

describe('the same course from every kind of file', () => {
  it.each(FIXTURES)('%s', name => {
    const course = courseOf(fixture(name), name);
    expect(course.holes.map(({ ref }) => ref)).toEqual(['1', '2', '3']);
    // Sketched in metres: √(60² + 52²) = 79.40 and √(20² + 88²) = 90.24; the sketch's metres a degree are within 0.05 % of the ellipsoid's.
    const [first, , third] = course.holes.map(({ line }) => lineLength_m(line));
    expect(Math.abs(first! - 79.4)).toBeLessThan(0.05);
    expect(Math.abs(third! - 90.24)).toBeLessThan(0.05);
  });

  it.each(FIXTURES)('%s: the report holds its schema and says what became of everything', name => {
    const report = reportImport(name, convertCourse(fixture(name), name));
    ImportReportSchema.parse(JSON.parse(JSON.stringify(report)));
    expect(report.ok).toBe(true);
    const left = report.leftOut.find(({ what }) => what === 'unused places')?.count ?? 0;
    expect(report.mapped.length + left).toBe(report.items.length);
  });

  it.each(FIXTURES)('%s: what is written reads the same again', name => {
    const first = taken(converted(fixture(name), name).course);
    const again = taken(converted(utf8(first.text), 'again.geojson').course);
    expect(again.text).toBe(first.text);
    expect(again.course.source.features).toEqual(first.course.source.features);
    expect(again.course.holes).toEqual(first.course.holes);
  });

  it('tells the kind by what stands in the file, not by its name', () => {
    for (const [name, kind] of [
      ['lantern-hollow.gpx', 'gpx'],
      ['lantern-hollow.kmz', 'kmz'],
      ['lantern-hollow-overpass.json', 'overpass'],
    ] as const)
      expect(converted(fixture(name), 'course.txt').read.kind).toBe(kind);
  });
});

describe('GPX', () => {
  const places =
    '<wpt lat="60" lon="25"><ele>12.5</ele><name>T1</name></wpt><wpt lat="60.001" lon="25"><ele>14</ele><name>B1</name></wpt>';
  it('leaves heights out unless they are wanted, and then says what they are measured from', () => {
    const without = converted(gpx(places));
    expect(without.leftOut).toContainEqual(expect.objectContaining({ what: 'heights', count: 2 }));
    expect(taken(without.course).course.heights).toEqual([]);
    const wanted = taken(converted(gpx(places), 'a', { takeHeights: true }).course);
    expect(wanted.course.holes[0]!.tee.height_m).toBe(12.5);
    expect(JSON.parse(wanted.text)).toMatchObject({ heightDatum: 'sea level' });
  });
  it('reads GPX 1.0, prefixed elements and CDATA', () => {
    const old = utf8(
      `<?xml version="1.0" encoding="UTF-8"?><!-- mine --><g:gpx xmlns:g="http://www.topografix.com/GPX/1/0" version="1.0">${places.replaceAll('<', '<g:').replaceAll('<g:/', '</g:').replace('T1', '<![CDATA[T1]]>')}</g:gpx>`,
    );
    expect(courseOf(old).holes).toHaveLength(1);
    expect(problemsOf(utf8('<GPX></GPX>'))[0]!.message).toContain('must be <gpx>');
  });
  it('drops sensors and times before they cost anything', () => {
    const track = Array.from(
      { length: 9000 },
      (_, i) =>
        `<trkpt lat="60.${String(i).padStart(5, '0')}" lon="25"><time>2026-05-01T10:00:00Z</time><extensions><a:hr xmlns:a="x">90</a:hr></extensions></trkpt>`,
    ).join('');
    const { read } = converted(gpx(`${places}<trk><name>Walk</name><trkseg>${track}</trkseg></trk>`));
    expect(read.items).toHaveLength(3);
    expect(Object.keys(read.features[0]!.properties!)).toEqual(['name', '@from']);
  });
});

describe('KML', () => {
  const mark = (name: string, place: string, more = '') =>
    `<Placemark><name>${name}</name>${more}<Point>${more}<coordinates>${place}</coordinates></Point></Placemark>`;
  it('takes "absolute" heights for heights of the ground, and no others', () => {
    const read = (mode: string) =>
      taken(
        converted(kml(`${mark('T1', '25,60,30', mode)}${mark('B1', '25,60.001,32', mode)}`), 'a', { takeHeights: true })
          .course,
      ).course;
    expect(read('<altitudeMode>absolute</altitudeMode>').holes[0]!.basket.height_m).toBe(32);
    expect(read('<altitudeMode>relativeToGround</altitudeMode>').holes[0]!.basket.height_m).toBeUndefined();
    expect(read('').holes[0]!.basket.height_m).toBeUndefined();
  });
  it('keeps attached data as tags', () => {
    const data = (key: string, value: string) => `<Data name="${key}"><value>${value}</value></Data>`;
    const placed = kml(
      mark('A', '25,60', `<ExtendedData>${data('disc_golf', 'tee')}${data('ref', '7')}</ExtendedData>`) +
        mark('B', '25,60.001', `<ExtendedData>${data('disc_golf', 'basket')}${data('ref', '7')}</ExtendedData>`),
    );
    const { read, course } = converted(placed);
    expect(read.items).toEqual([]);
    expect(taken(course).course.holes[0]!.ref).toBe('7');
  });
  it('mends blanks after commas and says where a place is none', () => {
    expect(courseOf(kml(mark('T1', '25, 60') + mark('B1', ' 25 ,60.001 '))).holes).toHaveLength(1);
    expect(problemsOf(kml(mark('T1', '60,125')))).toMatchObject([
      { path: 'placemark "T1"', message: expect.stringContaining('swapped') as unknown },
    ]);
  });
  it('follows no link', () => {
    const linked = kml(
      `${mark('T1', '25,60')}${mark('B1', '25,60.001')}<NetworkLink><Link><href>http://example.invalid/</href></Link></NetworkLink>`,
    );
    expect(converted(linked).leftOut).toContainEqual(
      expect.objectContaining({ what: 'links to other maps', count: 1 }),
    );
  });
  it('takes doc.kml of an archive, else the KML nearest to its top', () => {
    const one = kml(mark('T1', '25,60') + mark('B1', '25,60.001'));
    const other = kml(mark('T9', '25,60') + mark('B9', '25,60.001'));
    expect(courseOf(zipSync({ 'a.kml': other, 'doc.kml': one })).holes[0]!.ref).toBe('1');
    expect(courseOf(zipSync({ 'maps/a.kml': other, 'z.kml': one })).holes[0]!.ref).toBe('1');
    expect(problemsOf(zipSync({ 'doc.kml': utf8('<kml><') }))[0]!.path).toBe('doc.kml: line 1, column 6');
  });
});

describe('OpenStreetMap', () => {
  const node = (id: number, lat: number, lon: number, tags = '') =>
    `<node id="${id}" lat="${lat}" lon="${lon}">${tags}</node>`;
  const tag = (k: string, v: string) => `<tag k="${k}" v="${v}"/>`;
  const holeAt = (id: number, lon: number, ref: string) =>
    node(id, 60, lon) +
    node(id + 1, 60.001, lon) +
    `<way id="${id}"><nd ref="${id}"/><nd ref="${id + 1}"/>${tag('disc_golf', 'hole')}${tag('ref', ref)}</way>`;

  it('leaves out who edited what, and what lies far away', () => {
    const { course, leftOut } = converted(fixture('lantern-hollow.osm'));
    const { text } = taken(course);
    expect(text).not.toMatch(/somebody|"uid"|changeset/);
    expect(text).toContain('OpenStreetMap contributors');
    expect(leftOut).toEqual([{ what: 'other things', count: 1, why: expect.stringContaining('500 m') as unknown }]);
  });

  it('keeps what a course says of lost discs, relief and drop zones', () => {
    const nodes = [
      [1, 60, 25, 'disc_golf=tee,ref=1'],
      [2, 60.0008, 25, 'disc_golf=basket,ref=1'],
      [3, 60.0004, 25.0002, 'disc_golf=drop_zone,ref=1,serves=lost_disc'],
      [4, 60.0002, 24.999, ''],
      [5, 60.0006, 24.999, ''],
      [6, 60.0006, 24.9995, ''],
    ] as const;
    const tags = (text: string) =>
      text
        .split(',')
        .filter(Boolean)
        .map(tag => `<tag k="${tag.split('=')[0]}" v="${tag.split('=')[1]}"/>`)
        .join('');
    const way = (id: number, text: string) =>
      `<way id="${id}"><nd ref="4"/><nd ref="5"/><nd ref="6"/><nd ref="4"/>${tags(text)}</way>`;
    const file = osm(
      nodes.map(([id, lat, lon, text]) => `<node id="${id}" lat="${lat}" lon="${lon}">${tags(text)}</node>`).join('') +
        way(7, 'natural=wood,lost_disc=0.05') +
        way(8, 'natural=water,relief=previous_lie'),
    );
    const { objects } = courseOf(file);
    expect(objects).toContainEqual(expect.objectContaining({ kind: 'lostGround', share: 0.05 }));
    expect(objects).toContainEqual(expect.objectContaining({ kind: 'outOfBounds', relief: ['previousLie'] }));
    expect(objects).toContainEqual(expect.objectContaining({ kind: 'dropZone', uses: ['lostDisc'] }));
  });

  it('makes the same of XML and of Overpass JSON', () => {
    const [xml, json] = (['lantern-hollow.osm', 'lantern-hollow-overpass.json'] as const).map(
      name => courseOf(fixture(name)).source,
    );
    const sorted = (file: typeof xml) =>
      file!.features.map(({ id, properties, geometry }) => JSON.stringify([id, properties, geometry])).sort();
    expect(sorted(json)).toEqual(sorted(xml));
  });

  it('asks which of several courses is meant', () => {
    const two = osm(
      `${holeAt(1, 25, '1')}${holeAt(11, 25.1, '1')}${node(91, 60, 25, tag('leisure', 'disc_golf_course') + tag('name', 'West'))}${node(92, 60, 25.1, tag('leisure', 'disc_golf_course') + tag('name', 'East'))}`,
    );
    expect(problemsOf(two)).toMatchObject([
      { path: 'course', message: expect.stringContaining('West (1 holes), East (1 holes)') as unknown },
    ]);
    const east = courseOf(two, 'a', { course: 'node/92' });
    expect(east.name).toBe('East');
    expect(east.holes.map(({ tee }) => tee.position[0])).toEqual([25.1]);
  });

  it('names the thing itself where something is wrong with it', () => {
    const bad = osm(`${holeAt(1, 25, '1')}${node(5, 60, 25, tag('disc_golf', 'mando') + tag('mando', 'up'))}`);
    expect(problemsOf(bad)).toMatchObject([{ path: 'node/5.properties.mando' }]);
  });

  it('draws a way with corners missing as far as it goes, and says so', () => {
    const { course, assumptions } = converted(
      osm(
        `${holeAt(1, 25, '1')}${node(7, 60.0005, 25)}${node(8, 60.0005, 25.001)}<way id="9"><nd ref="7"/><nd ref="8"/><nd ref="404"/>${tag('highway', 'path')}</way>`,
      ),
    );
    expect(course.ok).toBe(true);
    expect(assumptions).toContainEqual({ path: 'way/9', message: expect.stringContaining('not whole') as unknown });
  });

  it('leaves out what is marked as deleted', () => {
    const { leftOut } = converted(
      osm(`${holeAt(1, 25, '1')}<node id="70" action="delete" lat="60" lon="25"/><node id="71" visible="false"/>`),
    );
    expect(leftOut).toContainEqual({ what: 'nodes', count: 2, why: 'marked as deleted in the file' });
  });

  it('says how to ask Overpass for shapes', () => {
    const json = JSON.parse(fixtureText('lantern-hollow-overpass.json')) as {
      elements: { type: string; nodes?: unknown; geometry?: unknown }[];
    };
    for (const element of json.elements)
      if (element.type === 'way') for (const key of ['nodes', 'geometry'] as const) delete element[key];
    expect(converted(utf8(JSON.stringify(json))).leftOut).toContainEqual(
      expect.objectContaining({ what: 'ways', why: expect.stringContaining('out geom;') as unknown }),
    );
  });

  it('takes nodes that only a geometry gives', () => {
    const json = JSON.parse(fixtureText('lantern-hollow-overpass.json')) as {
      elements: { type: string; nodes?: unknown }[];
    };
    for (const element of json.elements) delete element.nodes;
    expect(courseOf(utf8(JSON.stringify(json))).holes).toHaveLength(3);
  });
});

describe('GeoJSON', () => {
  it('is kept letter for letter when nothing has to be said', () => {
    const text =
      '{ "features": [{"type":"Feature","id":9,"odd":[1.0],"properties":{"disc_golf":"hole","ref":"1","x":{"y":null}},\n"geometry":{"type":"LineString","coordinates":[[25,60],[25,60.001]]}}],\t"type":"FeatureCollection", "more": "é" }';
    expect(taken(converted(utf8(text)).course).text).toBe(text);
  });
  it('gets a name of the user’s without losing anything', () => {
    const { course } = converted(fixture('lantern-hollow-drawn.geojson'), 'a', { name: 'Mine' });
    expect(taken(course).course.name).toBe('Mine');
  });
});

describe('how text is written', () => {
  const gpxText = fixtureText('lantern-hollow.gpx').replace('Car park', 'Café – Å');
  const utf16 = (text: string, isBig = false) => {
    const bytes = Buffer.from(`\uFEFF${text}`, 'utf16le');
    return isBig ? bytes.swap16() : bytes;
  };
  it.each([
    ['UTF-8 with a mark', utf8(`\uFEFF${gpxText}`)],
    ['UTF-16, small end first', utf16(gpxText.replace('UTF-8', 'UTF-16'))],
    ['UTF-16, big end first', utf16(gpxText.replace('UTF-8', 'UTF-16'), true)],
    ['UTF-16 without a mark', utf16(gpxText).subarray(2)],
    ['UTF-16 without a mark, big end first', utf16(gpxText, true).subarray(2)],
    ['Windows-1252', Buffer.from(gpxText.replace('UTF-8', 'windows-1252').replace('–', '\x96'), 'latin1')],
  ])('%s', (_, bytes) => {
    const { read } = converted(bytes);
    expect(read.items.map(({ name }) => name)).toContain('Café – Å');
  });
  it('reads GeoJSON in UTF-16 too', () => {
    expect(courseOf(utf16(fixtureText('lantern-hollow-drawn.geojson'))).holes).toHaveLength(3);
  });
});
