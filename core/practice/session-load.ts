import type { PlayerFile } from '../player/player-file.ts';

/** The most full throws of one session of fieldwork: what the arm is known to have done in a day. */
export type SessionLoad = Readonly<{ mostThrows: number; mostForehand: number }>;

export function sessionLoad(sessions: PlayerFile['sessions']): SessionLoad {
  const counts = sessions.map(({ throws }) => ({
    all: throws.length,
    forehand: throws.filter(({ hand }) => hand === 'forehand').length,
  }));
  return {
    mostThrows: Math.max(0, ...counts.map(({ all }) => all)),
    mostForehand: Math.max(0, ...counts.map(({ forehand }) => forehand)),
  };
}
