import type { PainSign } from '../../../sensors/sessionEvent.ts';

/** What a practice at home says beside its main screens. */
export const home = {
  alerts: 'Warnings and notices',
  /** Place of a warning among those that stand, the newest first. */
  warningPlace: (n: number, of: number) => `${n} of ${of}`,
  /** In place of how far a calibration or a re-check has come. */
  refused: 'Refused.',
  moved: 'A sensor does not sit as it did',
  /** @param ms epoch */
  day: (ms: number) => new Date(ms).toLocaleDateString('en-GB', { dateStyle: 'long' }),
  painSigns: (signs: readonly PainSign[]) => `Pain was told to be: ${signs.join(', ')}`,
  panels: 'Body, curves and measures',
};
