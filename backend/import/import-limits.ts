/**
 * What an importer takes. Wide bounds around real files: a mapped course is some hundred kilobytes, an extract of a whole
 * town some megabytes. They keep the worst file within two seconds and 300 MB (tests/backend/import/hostile.test.ts holds them to it).
 */
export const importLimits = {
  file_bytes: 20_000_000,
  /** Of an archive: entries, bytes once unzipped, and how many times larger than zipped. Text of maps zips about 10 : 1. */
  zipEntries: 500,
  unzipped_bytes: 20_000_000,
  zipRatio: 100,
  /** Folders within folders; a map needs ten. */
  xmlDepth: 64,
  xmlElements: 500_000,
  /** Elements that mean something in a GPX or KML file: each costs some kilobytes while it is read. */
  treeElements: 40_000,
  /** Nodes, ways and relations of an OpenStreetMap extract. */
  osmElements: 150_000,
  /** Nodes named by ways, and members of relations, all together. */
  osmReferences: 300_000,
  membersOfRelation: 2000,
  /** Corners of inner rings times corners of outer rings, all multipolygons together: what sorting them costs. */
  ringPairs: 20_000_000,
  /** Places and lines whose role the user has to confirm. */
  looseItems: 2000,
  features: 30_000,
  positions: 100_000,
} as const;
