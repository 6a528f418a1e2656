import { deflateSync, strToU8, type Zippable, zipSync } from 'fflate';

/** A file that means harm, or is only broken: it must end in a message. `says`: a word of it. */
export type HostileFile = Readonly<{ name: string; bytes: () => Uint8Array; says: RegExp }>;

const utf8 = (text: string) => strToU8(text);
const KML = (inside: string) => `<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inside}</Document></kml>`;
const GPX = (inside: string) =>
  `<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">${inside}</gpx>`;
const FEATURES = (features: string) => `{"type":"FeatureCollection","features":[${features}]}`;
const place = (i: number) => `${(24 + (i % 1000) / 1e5).toFixed(6)},${(60 + (i >> 10) / 1e5).toFixed(6)}`;
const many = (count: number, of: (i: number) => string, between = '') =>
  Array.from({ length: count }, (_, i) => of(i)).join(between);
const zipped = (files: Zippable) => zipSync(files, { level: 6 });

/** An archive of one entry whose table of contents says what it likes. */
function zipOf(
  name: string,
  packed: Uint8Array,
  {
    unpacked_bytes,
    method = 8,
    flags = 0,
    copies = 1,
  }: Readonly<{ unpacked_bytes: number; method?: number; flags?: number; copies?: number }>,
): Uint8Array {
  const title = utf8(name);
  const local = new Uint8Array(30 + title.length + packed.length);
  const head = new DataView(local.buffer);
  head.setUint32(0, 0x04034b50, true);
  head.setUint16(6, flags, true);
  head.setUint16(8, method, true);
  head.setUint32(18, packed.length, true);
  head.setUint32(22, unpacked_bytes, true);
  head.setUint16(26, title.length, true);
  local.set(title, 30);
  local.set(packed, 30 + title.length);
  const central = new Uint8Array((46 + title.length) * copies + 22);
  const table = new DataView(central.buffer);
  for (let i = 0; i < copies; i++) {
    const at = i * (46 + title.length);
    table.setUint32(at, 0x02014b50, true);
    table.setUint16(at + 8, flags, true);
    table.setUint16(at + 10, method, true);
    table.setUint32(at + 20, packed.length, true);
    table.setUint32(at + 24, unpacked_bytes, true);
    table.setUint16(at + 28, title.length, true);
    central.set(title, at + 46);
  }
  const end = (46 + title.length) * copies;
  table.setUint32(end, 0x06054b50, true);
  table.setUint16(end + 8, copies, true);
  table.setUint16(end + 10, copies, true);
  table.setUint32(end + 12, end, true);
  table.setUint32(end + 16, local.length, true);
  return Buffer.concat([local, central]);
}

const bomb = () => deflateSync(new Uint8Array(60_000_000), { level: 6 });

const laughs = `<?xml version="1.0"?><!DOCTYPE kml [<!ENTITY a "ha">${many(9, i => `<!ENTITY a${i} "${many(10, () => (i === 0 ? '&a;' : `&a${i - 1};`))}">`)}]>${KML('<name>&a8;</name>')}`;

export const HOSTILE_FILES: readonly HostileFile[] = [
  // Archives.
  {
    name: 'a bomb that owns up',
    bytes: () => zipOf('doc.kml', bomb(), { unpacked_bytes: 400_000_000 }),
    says: /unpacks to/,
  },
  {
    name: 'a bomb that lies',
    bytes: () => zipOf('doc.kml', bomb(), { unpacked_bytes: 1000 }),
    says: /unpacks to more than/,
  },
  { name: 'a path out of the archive', bytes: () => zipped({ '../../up.kml': utf8(KML('')) }), says: /leads out/ },
  { name: 'a path from the root', bytes: () => zipped({ '/etc/doc.kml': utf8(KML('')) }), says: /leads out/ },
  { name: 'a path with a drive', bytes: () => zipped({ 'C:\\doc.kml': utf8(KML('')) }), says: /leads out/ },
  {
    name: 'the same name twice',
    bytes: () => zipOf('doc.kml', new Uint8Array(2), { unpacked_bytes: 0, copies: 2 }),
    says: /twice/,
  },
  {
    name: 'far too many entries',
    bytes: () => zipped(Object.fromEntries(Array.from({ length: 600 }, (_, i) => [`${i}.kml`, utf8('x')]))),
    says: /600 files/,
  },
  {
    name: 'a locked archive',
    bytes: () => zipOf('doc.kml', new Uint8Array(9), { unpacked_bytes: 9, flags: 1 }),
    says: /password/,
  },
  {
    name: 'an unknown packing',
    bytes: () => zipOf('doc.kml', new Uint8Array(9), { unpacked_bytes: 9, method: 99 }),
    says: /method 99/,
  },
  { name: 'no map in the archive', bytes: () => zipped({ 'readme.txt': utf8('x') }), says: /without a KML/ },
  {
    name: 'an archive cut short',
    bytes: () => zipped({ 'doc.kml': utf8(KML(many(500, String))) }).slice(0, 200),
    says: /stops too early/,
  },
  {
    name: 'an archive of garbage',
    bytes: () => utf8(`PK\x03\x04${many(300, i => String.fromCharCode(i % 128))}`),
    says: /archive/,
  },
  // XML.
  { name: 'a billion laughs', bytes: () => utf8(laughs), says: /document type/ },
  {
    name: 'an entity from outside',
    bytes: () =>
      utf8(
        `<!DOCTYPE gpx [<!ENTITY f SYSTEM "file:///etc/passwd">]>${GPX('<wpt lat="1" lon="1"><name>&f;</name></wpt>')}`,
      ),
    says: /document type/,
  },
  { name: 'an unknown entity', bytes: () => utf8(GPX('<wpt lat="1" lon="1"><name>&f;</name></wpt>')), says: /&f;/ },
  { name: 'deep XML', bytes: () => utf8(`<kml>${'<Folder>'.repeat(200_000)}`), says: /deep/ },
  { name: 'a wide tag', bytes: () => utf8(`<osm ${many(100_000, i => `a${i}="1"`, ' ')}></osm>`), says: /attributes/ },
  { name: 'too many elements', bytes: () => utf8(`<osm>${'<a/>'.repeat(700_000)}</osm>`), says: /elements/ },
  { name: 'one text without end', bytes: () => utf8(`<gpx>${'x'.repeat(19_000_000)}`), says: /stops too early/ },
  {
    name: 'a comment without end',
    bytes: () => utf8(`<kml><!--${'-'.repeat(15_000_000)}`),
    says: /comment never ends/,
  },
  { name: 'opening brackets', bytes: () => utf8(`<gpx>${'<'.repeat(5_000_000)}`), says: /opens nothing/ },
  { name: 'blanks in a tag', bytes: () => utf8(`<gpx ${' '.repeat(10_000_000)}`), says: /not whole/ },
  { name: 'a name without end', bytes: () => utf8(`<gpx><${'a'.repeat(10_000_000)}`), says: /not whole/ },
  { name: 'comments before nothing', bytes: () => utf8('<!---->'.repeat(1_000_000)), says: /no first element/ },
  {
    name: 'a tree too large',
    bytes: () => utf8(KML(many(50_000, i => `<Placemark><name>${i}</name></Placemark>`))),
    says: /cut it down/,
  },
  {
    name: 'a track without end',
    bytes: () => utf8(GPX(`<trk><trkseg>${many(200_000, i => `<trkpt lat="60.${i}" lon="24"/>`)}</trkseg></trk>`)),
    says: /cut it down/,
  },
  { name: 'a place off the Earth', bytes: () => utf8(GPX('<wpt lat="95" lon="24"/>')), says: /-90 to 90/ },
  {
    name: 'a place that is no number',
    bytes: () => utf8(KML('<Placemark><name>A</name><Point><coordinates>24,9;60,2</coordinates></Point></Placemark>')),
    says: /placemark "A"/,
  },
  // OpenStreetMap.
  {
    name: 'more nodes than a town',
    bytes: () => utf8(`<osm>${many(260_000, i => `<node id="${i}" lat="60" lon="24"/>`)}</osm>`),
    says: /cut it down/,
  },
  {
    name: 'more corners than a country',
    bytes: () =>
      utf8(
        `<osm><node id="1" lat="60" lon="24"/><way id="1">${'<nd ref="1"/>'.repeat(490_000)}</way><way id="2">${'<nd ref="1"/>'.repeat(9000)}</way></osm>`,
      ),
    says: /no disc golf|cut it down/,
  },
  {
    name: 'rings within rings',
    bytes: () => utf8(JSON.stringify({ generator: 'x', elements: ringRelation(20_000) })),
    says: /no disc golf/,
  },
  {
    name: 'a map without discs',
    bytes: () => utf8('<osm><node id="1" lat="60" lon="24"><tag k="natural" v="tree"/></node></osm>'),
    says: /no disc golf/,
  },
  {
    name: 'elements of nothing',
    bytes: () => utf8('{"generator":"x","elements":[{"type":"node","id":"seven"},{"type":"way"}]}'),
    says: /elements\[0\]/,
  },
  { name: 'no elements', bytes: () => utf8('{"osm3s":{},"elements":{}}'), says: /elements/ },
  // JSON.
  { name: 'deep JSON', bytes: () => utf8('['.repeat(19_000_000)), says: /JSON list/ },
  {
    name: 'a deep object',
    bytes: () => utf8(`{"type":"FeatureCollection","features":${'['.repeat(5_000_000)}`),
    says: /deep/,
  },
  {
    name: 'deep properties',
    bytes: () =>
      utf8(
        FEATURES(`{"type":"Feature","geometry":null,"properties":${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}}`),
      ),
    says: /deep/,
  },
  {
    name: 'a text without end',
    bytes: () => utf8(`{"type":"FeatureCollection","name":"${'\\n'.repeat(9_000_000)}`),
    says: /longer than/,
  },
  {
    name: 'a million positions',
    bytes: () =>
      utf8(
        FEATURES(
          `{"type":"Feature","properties":{},"geometry":{"type":"LineString","coordinates":[${many(900_000, () => '[1,2]', ',')}]}}`,
        ),
      ),
    says: /cut it down/,
  },
  {
    name: 'large and broken at its end',
    bytes: () =>
      utf8(
        `${FEATURES(many(60_000, i => `{"type":"Feature","properties":{"natural":"tree"},"geometry":{"type":"Point","coordinates":[${place(i)}]}}`, ',')).slice(0, -2)},]}`,
      ),
    says: /line 1, column|comma/,
  },
  {
    name: 'keys told twice',
    bytes: () => utf8(`{"type":"FeatureCollection","features":[]${',"a":1'.repeat(200_000)}}`),
    says: /twice/,
  },
  {
    name: 'numbers beyond all',
    bytes: () =>
      utf8(FEATURES('{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[1e999,1]}}')),
    says: /finite|outside/,
  },
  // Courses that take too long.
  {
    name: 'twenty thousand tees',
    bytes: () =>
      utf8(
        FEATURES(
          many(
            20_000,
            i =>
              `{"type":"Feature","properties":{"disc_golf":"${i % 2 ? 'tee' : 'basket'}","ref":"${i >> 1}"},"geometry":{"type":"Point","coordinates":[${place(i)}]}}`,
            ',',
          ),
        ),
      ),
    says: /at most/,
  },
  {
    name: 'a wood of a quarter million corners',
    bytes: () =>
      utf8(
        FEATURES(
          `${hole()},{"type":"Feature","properties":{"natural":"wood"},"geometry":{"type":"Polygon","coordinates":[[${star(250_000)}]]}}`,
        ),
      ),
    says: /corners/,
  },
  // No maps.
  { name: 'nothing', bytes: () => new Uint8Array(), says: /empty/ },
  { name: 'blanks', bytes: () => utf8(' \n '.repeat(1_000_000)), says: /empty/ },
  { name: 'zeros', bytes: () => new Uint8Array(10_000_000), says: /no map file/ },
  { name: 'a picture', bytes: () => new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), says: /picture/ },
  { name: 'a web page', bytes: () => utf8('<!DOCTYPE html><html><body>Sign in</body></html>'), says: /web page/ },
  { name: 'words', bytes: () => utf8('Hole 1: 95 m, straight'), says: /no map file/ },
  { name: 'half of a character', bytes: () => new Uint8Array([0x7b, 0x22, 0xc3, 0x28]), says: /not UTF-8/ },
  { name: 'UTF-16 cut in two', bytes: () => new Uint8Array([0xff, 0xfe, 0x3c, 0x00, 0x67]), says: /utf-16le/ },
  {
    name: 'a declared encoding that is none',
    bytes: () => utf8('<?xml version="1.0" encoding="klingon"?><gpx/>'),
    says: /klingon/,
  },
  { name: 'more than is taken', bytes: () => new Uint8Array(20_000_001), says: /larger than/ },
];

function hole(): string {
  return '{"type":"Feature","properties":{"disc_golf":"hole","ref":"1"},"geometry":{"type":"LineString","coordinates":[[24,60],[24.001,60]]}}';
}

/** A closed ring of so many corners that crosses itself nowhere. */
function star(corners: number): string {
  const ring = Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const radius = i % 2 === 0 ? 0.002 : 0.0019;
    return `[${(24 + radius * Math.cos(angle)).toFixed(9)},${(60 + radius * Math.sin(angle)).toFixed(9)}]`;
  });
  return [...ring, ring[0]].join(',');
}

/** A multipolygon whose inner ring has to be looked for in its outer one, corner by corner. */
function ringRelation(corners: number): object[] {
  const ring = (from: number) => Array.from({ length: corners }, (_, i) => from + i);
  const nodes = [...ring(1), ...ring(corners + 1)].map(id => ({
    type: 'node',
    id,
    lat: 60 + (id % 7) / 1e4,
    lon: 24 + (id % 11) / 1e4,
  }));
  return [
    ...nodes,
    { type: 'way', id: 1, nodes: [...ring(1), 1] },
    { type: 'way', id: 2, nodes: [...ring(corners + 1), corners + 1] },
    ...Array.from({ length: 40 }, (_, i) => ({
      type: 'relation',
      id: i + 1,
      members: [
        { type: 'way', ref: 1, role: 'outer' },
        { type: 'way', ref: 2, role: 'inner' },
      ],
      tags: { type: 'multipolygon', natural: 'wood' },
    })),
  ];
}
