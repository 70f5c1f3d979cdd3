import type { DeskSensor, DeskView } from '../../src/streaming/contract.ts';

/** A service that looks for sensors and has none. */
export const NOBODY_AROUND: DeskView = {
  problem: null,
  ready: true,
  searching: true,
  recording: false,
  sensors: [],
  shaken: null,
  tapFor: null,
  tapMissed: null,
  notKept: null,
  sync: { state: 'idle' },
};

/** On the chest, and as it should be. */
export const WELL: DeskSensor = {
  id: 'a',
  name: 'Blue',
  kind: 'Open-profile sensor',
  role: 'chest',
  state: 'streaming',
  reason: null,
  retryInMs: null,
  batteryPct: 87,
  rssiDbm: -60,
  nominalRateHz: 104,
  measuredRateHz: 103.6,
  lostPct: 0.04,
  lastPacketAgeMs: 0,
  clockResidualMs: 0.02,
  malformed: 0,
  canBlink: true,
  trace: [],
};
