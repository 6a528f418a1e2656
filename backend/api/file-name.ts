const LONGEST = 80;

/** A name every file system takes: "Ridge & Reservoir" gives `ridge-reservoir.geojson`. */
export function fileNameOf(name: string, extension: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter(word => word !== '');
  const stem = Array.from(words.join('-')).slice(0, LONGEST).join('').toWellFormed();
  return `${stem === '' ? 'roundwright' : stem}.${extension}`;
}
