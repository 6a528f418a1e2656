import type { AppContext } from '../app-context.ts';
import type { baseMap } from '../contract/base-map.ts';
import type { Handlers } from '../dispatch.ts';
import { currentSettings } from './settings.ts';

export function baseMapHandlers(app: AppContext): Pick<Handlers, keyof typeof baseMap> {
  return {
    describeBaseMap: ({ baseMap }) => app.tiles.facts(baseMap),
    getTile: async address => {
      const { baseMap } = currentSettings(app);
      const tile = baseMap === null ? null : await app.tiles.tile(baseMap, address);
      if (tile === null) return { ok: true, value: null };
      return { ok: true, value: { type: tile.type, base64: Buffer.from(tile.bytes).toString('base64') } };
    },
  };
}
