/** A coordinate system by its EPSG code. */
type Definition = Readonly<{ name: string /** For proj4. */; proj: string }>;

const GRS80 = '+ellps=GRS80 +towgs84=0,0,0 +units=m +no_defs';
const NAD83 = '+datum=NAD83 +units=m +no_defs';

/**
 * Geographic systems whose latitudes and longitudes are those of WGS 84 to a metre or two, which is what an elevation model is
 * placed to: taken as WGS 84.
 */
const GEOGRAPHIC: Readonly<Record<number, string>> = {
  4326: 'WGS 84',
  4979: 'WGS 84 (3D)',
  4269: 'NAD83',
  4617: 'NAD83(CSRS)',
  6318: 'NAD83(2011)',
  4258: 'ETRS89',
  4937: 'ETRS89 (3D)',
  4171: 'RGF93 v1',
  4283: 'GDA94',
  7844: 'GDA2020',
  4167: 'NZGD2000',
  4612: 'JGD2000',
  6668: 'JGD2011',
  4674: 'SIRGAS 2000',
  4490: 'CGCS2000',
  4619: 'SWEREF99',
  4019: 'on the GRS 1980 ellipsoid',
};

/**
 * Projected systems that public elevation models come in, besides the UTM zones. Parameters are those of the EPSG registry
 * (version 11.022, read with PROJ 9.5.1); the shifts to WGS 84 are the registry's own of about a metre or, for Great Britain
 * and Germany, a few metres.
 */
const PROJECTED: Readonly<Record<number, Definition>> = {
  2056: {
    name: 'CH1903+ / LV95',
    proj: '+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=2600000 +y_0=1200000 +ellps=bessel +towgs84=674.374,15.056,405.346,0,0,0,0 +units=m +no_defs',
  },
  2154: {
    name: 'RGF93 v1 / Lambert-93',
    proj: `+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 ${GRS80}`,
  },
  2157: {
    name: 'IRENET95 / Irish Transverse Mercator',
    proj: `+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=0.99982 +x_0=600000 +y_0=750000 ${GRS80}`,
  },
  2180: {
    name: 'ETRF2000-PL / CS92',
    proj: `+proj=tmerc +lat_0=0 +lon_0=19 +k=0.9993 +x_0=500000 +y_0=-5300000 ${GRS80}`,
  },
  2193: {
    name: 'NZGD2000 / New Zealand Transverse Mercator 2000',
    proj: `+proj=tmerc +lat_0=0 +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 ${GRS80}`,
  },
  3005: {
    name: 'NAD83 / BC Albers',
    proj: `+proj=aea +lat_0=45 +lon_0=-126 +lat_1=50 +lat_2=58.5 +x_0=1000000 +y_0=0 ${NAD83}`,
  },
  3006: { name: 'SWEREF99 TM', proj: `+proj=utm +zone=33 ${GRS80}` },
  3035: {
    name: 'ETRS89-extended / LAEA Europe',
    proj: `+proj=laea +lat_0=52 +lon_0=10 +x_0=4321000 +y_0=3210000 ${GRS80}`,
  },
  3059: {
    name: 'LKS-92 / Latvia TM',
    proj: `+proj=tmerc +lat_0=0 +lon_0=24 +k=0.9996 +x_0=500000 +y_0=-6000000 ${GRS80}`,
  },
  3067: { name: 'ETRS89 / TM35FIN(E,N)', proj: `+proj=utm +zone=35 ${GRS80}` },
  3301: {
    name: 'Estonian Coordinate System of 1997',
    proj: `+proj=lcc +lat_0=57.5175539305556 +lon_0=24 +lat_1=59.3333333333333 +lat_2=58 +x_0=500000 +y_0=6375000 ${GRS80}`,
  },
  3338: {
    name: 'NAD83 / Alaska Albers',
    proj: `+proj=aea +lat_0=50 +lon_0=-154 +lat_1=55 +lat_2=65 +x_0=0 +y_0=0 ${NAD83}`,
  },
  3346: {
    name: 'LKS94 / Lithuania TM',
    proj: `+proj=tmerc +lat_0=0 +lon_0=24 +k=0.9998 +x_0=500000 +y_0=0 ${GRS80}`,
  },
  3577: {
    name: 'GDA94 / Australian Albers',
    proj: `+proj=aea +lat_0=0 +lon_0=132 +lat_1=-18 +lat_2=-36 +x_0=0 +y_0=0 ${GRS80}`,
  },
  3763: {
    name: 'ETRS89 / Portugal TM06',
    proj: `+proj=tmerc +lat_0=39.6682583333333 +lon_0=-8.13310833333333 +k=1 +x_0=0 +y_0=0 ${GRS80}`,
  },
  3765: {
    name: 'HTRS96 / Croatia TM',
    proj: `+proj=tmerc +lat_0=0 +lon_0=16.5 +k=0.9999 +x_0=500000 +y_0=0 ${GRS80}`,
  },
  3794: {
    name: 'Slovenia 1996 / Slovene National Grid',
    proj: `+proj=tmerc +lat_0=0 +lon_0=15 +k=0.9999 +x_0=500000 +y_0=-5000000 ${GRS80}`,
  },
  3812: {
    name: 'ETRS89 / Belgian Lambert 2008',
    proj: `+proj=lcc +lat_0=50.797815 +lon_0=4.35921583333333 +lat_1=49.8333333333333 +lat_2=51.1666666666667 +x_0=649328 +y_0=665262 ${GRS80}`,
  },
  3857: {
    name: 'WGS 84 / Pseudo-Mercator',
    proj: '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs',
  },
  3978: {
    name: 'NAD83 / Canada Atlas Lambert',
    proj: `+proj=lcc +lat_0=49 +lon_0=-95 +lat_1=49 +lat_2=77 +x_0=0 +y_0=0 ${NAD83}`,
  },
  5070: {
    name: 'NAD83 / Conus Albers',
    proj: `+proj=aea +lat_0=23 +lon_0=-96 +lat_1=29.5 +lat_2=45.5 +x_0=0 +y_0=0 ${NAD83}`,
  },
  6350: {
    name: 'NAD83(2011) / Conus Albers',
    proj: `+proj=aea +lat_0=23 +lon_0=-96 +lat_1=29.5 +lat_2=45.5 +x_0=0 +y_0=0 ${GRS80}`,
  },
  7801: {
    name: 'BGS2005 / CCS2005',
    proj: `+proj=lcc +lat_0=42.6678756833333 +lon_0=25.5 +lat_1=42 +lat_2=43.3333333333333 +x_0=500000 +y_0=4725824.3591 ${GRS80}`,
  },
  27700: {
    name: 'OSGB36 / British National Grid',
    proj: '+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489 +units=m +no_defs',
  },
  28992: {
    name: 'Amersfoort / RD New',
    proj: '+proj=sterea +lat_0=52.1561605555556 +lon_0=5.38763888888889 +k=0.9999079 +x_0=155000 +y_0=463000 +ellps=bessel +towgs84=565.4171,50.3319,465.5524,-0.398957388243134,0.343987817378283,-1.87740163998045,4.0725 +units=m +no_defs',
  },
  31370: {
    name: 'BD72 / Belgian Lambert 72',
    proj: '+proj=lcc +lat_0=90 +lon_0=4.36748666666667 +lat_1=51.1666672333333 +lat_2=49.8333339 +x_0=150000.013 +y_0=5400088.438 +ellps=intl +towgs84=-106.8686,52.2978,-103.7239,0.3366,-0.457,1.8422,-1.2747 +units=m +no_defs',
  },
  31467: {
    name: 'DHDN / 3-degree Gauss-Kruger zone 3',
    proj: '+proj=tmerc +lat_0=0 +lon_0=9 +k=1 +x_0=3500000 +y_0=0 +ellps=bessel +towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7 +units=m +no_defs',
  },
  31468: {
    name: 'DHDN / 3-degree Gauss-Kruger zone 4',
    proj: '+proj=tmerc +lat_0=0 +lon_0=12 +k=1 +x_0=4500000 +y_0=0 +ellps=bessel +towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7 +units=m +no_defs',
  },
};

/** UTM zones, whose codes count up with the zone; `first` is the code of zone 0. */
const UTM: readonly Readonly<{
  first: number;
  zones: readonly [from: number, to: number];
  half: 'N' | 'S';
  datum: string;
  proj: string;
}>[] = [
  { first: 32600, zones: [1, 60], half: 'N', datum: 'WGS 84', proj: '+datum=WGS84 +units=m +no_defs' },
  { first: 32700, zones: [1, 60], half: 'S', datum: 'WGS 84', proj: '+south +datum=WGS84 +units=m +no_defs' },
  { first: 25800, zones: [28, 38], half: 'N', datum: 'ETRS89', proj: GRS80 },
  { first: 26900, zones: [1, 23], half: 'N', datum: 'NAD83', proj: NAD83 },
  { first: 6329, zones: [1, 19], half: 'N', datum: 'NAD83(2011)', proj: GRS80 },
  { first: 28300, zones: [46, 59], half: 'S', datum: 'GDA94 (MGA)', proj: `+south ${GRS80}` },
  { first: 7800, zones: [46, 59], half: 'S', datum: 'GDA2020 (MGA)', proj: `+south ${GRS80}` },
  { first: 2955 - 11, zones: [11, 13], half: 'N', datum: 'NAD83(CSRS)', proj: GRS80 },
  { first: 31954, zones: [11, 22], half: 'N', datum: 'SIRGAS 2000', proj: GRS80 },
  { first: 31960, zones: [17, 25], half: 'S', datum: 'SIRGAS 2000', proj: `+south ${GRS80}` },
];

/** @returns undefined for a code that is not among those we know */
export function geographicName(code: number): string | undefined {
  return GEOGRAPHIC[code];
}

/** @returns undefined for a code that is not among those we know */
export function projectedDefinition(code: number): Definition | undefined {
  for (const { first, zones, half, datum, proj } of UTM) {
    const zone = code - first;
    if (zone >= zones[0] && zone <= zones[1])
      return { name: `${datum} / UTM zone ${zone}${half}`, proj: `+proj=utm +zone=${zone} ${proj}` };
  }
  return PROJECTED[code];
}
