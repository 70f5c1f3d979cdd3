import { NO_SPREADS } from '../../sessions/store/spreads.ts';

/** The columns of a session that only its analysis knows, before there is one. */
export const NOT_ANALYSED = {
  durationS: null,
  analysed: 0,
  version: null,
  problem: null,
  rehearsals: 0,
  scored: 0,
  passed: 0,
  balls: 0,
  practiceSwings: 0,
  ballsInMix: 0,
  ledger: '',
  warnings: 0,
  spreads: JSON.stringify(NO_SPREADS),
  carryOver: JSON.stringify({ addedFlexion: null, keptRotation: null }),
  differences: '[]',
} as const;
