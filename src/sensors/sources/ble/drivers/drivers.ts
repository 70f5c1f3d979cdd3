import type { Advertisement, Driver, DriverKind } from './driver.ts';
import { movesenseDriver } from './movesenseDriver.ts';
import { openProfileDriver } from './openProfileDriver.ts';
import { witMotionDriver } from './witMotionDriver.ts';

/** Tried in this order. */
const DRIVERS: readonly Driver[] = [openProfileDriver, witMotionDriver, movesenseDriver];

export const driverFor = (advertisement: Advertisement): Driver | null =>
  DRIVERS.find((d) => d.matches(advertisement)) ?? null;

export function driverOf(kind: DriverKind): Driver {
  const driver = DRIVERS.find((d) => d.kind === kind);
  if (!driver) throw new RangeError(`No driver for sensors of kind ${kind}`);
  return driver;
}
