import { createRequire } from 'node:module';
import type { Noble } from './nobleApi.ts';

/**
 * Loads noble and opens the adapter. Loading alone opens a socket, keeps the process alive for ever and
 * may throw at once, so only the radio's own process does it. Throws what the system says.
 */
export function loadNoble(): Noble {
  const noble = createRequire(import.meta.url)('@abandonware/noble') as Noble;
  // Reading the state opens the adapter here and now, where its error can be caught; an event listener would hide it.
  if (typeof noble.state !== 'string') throw new Error('noble has no adapter state');
  return noble;
}

/** Is the optional package there at all? Does not load it. */
export function nobleIsInstalled(): boolean {
  try {
    createRequire(import.meta.url).resolve('@abandonware/noble');
    return true;
  } catch {
    return false;
  }
}
