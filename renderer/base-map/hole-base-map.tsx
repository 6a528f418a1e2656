import L from 'leaflet';
import { useEffect, useMemo } from 'react';
import { useMap } from 'react-leaflet';
import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { HoleAxes } from '../frame/hole-axes.ts';
import { MapCredit } from './map-credit.tsx';
import { tilesOverHole } from './tiles-over-hole.ts';
import { type ShownBaseMap, useBaseMap } from './use-base-map.ts';

/** Ground shown round the line of play. */
const ROUND_m = 120;
const TILE_pixels = 256;

/** Pictures under a hole that is laid on its side: each tile turned with it. */
export function HoleBaseMap({ map, axes }: Readonly<{ map: PlainHoleMap; axes: HoleAxes }>) {
  const baseMap = useBaseMap();
  if (baseMap === null) return null;
  return (
    <>
      <TurnedTiles map={map} axes={axes} baseMap={baseMap} />
      <MapCredit text={baseMap.attribution} />
    </>
  );
}

type TurnedTilesProps = Readonly<{ map: PlainHoleMap; axes: HoleAxes; baseMap: ShownBaseMap }>;

function TurnedTiles({ map, axes, baseMap }: TurnedTilesProps) {
  const leaflet = useMap();
  const { address, minZoom, maxZoom } = baseMap;
  const tiles = useMemo(
    () => tilesOverHole(map.origin, boxRound(map.line), { minZoom, maxZoom }),
    [map, minZoom, maxZoom],
  );
  useEffect(() => {
    if (tiles.length === 0) return;
    const place = (point: LocalPoint) => axes.toHole(point);
    const corners = tiles.flatMap(({ northWest, northEast, southWest }) => {
      const [a, b, c] = [place(northWest), place(northEast), place(southWest)];
      return [a, b, c, [b[0] + c[0] - a[0], b[1] + c[1] - a[1]] as const];
    });
    const along = corners.map(([x]) => x);
    const left = corners.map(([, y]) => y);
    const [west, east] = [Math.min(...along), Math.max(...along)];
    const [south, north] = [Math.min(...left), Math.max(...left)];
    const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    svg.setAttribute('viewBox', `0 0 ${east - west} ${north - south}`);
    svg.setAttribute('preserveAspectRatio', 'none');
    svg.setAttribute('class', 'base-map');
    for (const { z, x, y, northWest, northEast, southWest } of tiles) {
      const [a, b, c] = [northWest, northEast, southWest].map(place) as [
        readonly [number, number],
        readonly [number, number],
        readonly [number, number],
      ];
      const image = document.createElementNS('http://www.w3.org/2000/svg', 'image');
      const at = (value: number) => (value / TILE_pixels).toFixed(9);
      // Picture pixels to metres along the hole and down from the top of the overlay.
      image.setAttribute(
        'transform',
        `matrix(${at(b[0] - a[0])} ${at(a[1] - b[1])} ${at(c[0] - a[0])} ${at(a[1] - c[1])} ${a[0] - west} ${north - a[1]})`,
      );
      // A hair larger, so that no seam shows between two turned pictures.
      image.setAttribute('width', String(TILE_pixels + 0.5));
      image.setAttribute('height', String(TILE_pixels + 0.5));
      image.setAttribute('preserveAspectRatio', 'none');
      image.setAttribute('href', address.replace('{z}', String(z)).replace('{x}', String(x)).replace('{y}', String(y)));
      svg.append(image);
    }
    const overlay = L.svgOverlay(svg, L.latLngBounds([south, west], [north, east]), {
      pane: 'tilePane',
      interactive: false,
    });
    overlay.addTo(leaflet);
    return () => {
      overlay.remove();
    };
  }, [leaflet, tiles, axes, address]);
  return null;
}

function boxRound(line: readonly LocalPoint[]) {
  const [xs, ys] = [line.map(([x]) => x), line.map(([, y]) => y)];
  return {
    west_m: Math.min(...xs) - ROUND_m,
    east_m: Math.max(...xs) + ROUND_m,
    south_m: Math.min(...ys) - ROUND_m,
    north_m: Math.max(...ys) + ROUND_m,
  };
}
