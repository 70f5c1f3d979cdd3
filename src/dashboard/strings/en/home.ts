import type { PainSign } from '../../../sensors/sessionEvent.ts';

/** What a practice at home says beside its main screens. */
export const home = {
  alerts: 'Warnings and notices',
  /** Place of a warning among those that stand, the newest first. */
  warningPlace: (n: number, of: number) => `${n} of ${of}`,
  /** In place of the progress of a calibration or a re-check. */
  refused: 'Failed.',
  moved: 'A sensor has moved',
  /** @param ms epoch */
  day: (ms: number) => new Date(ms).toLocaleDateString('en-GB', { dateStyle: 'long' }),
  painSigns: (signs: readonly PainSign[]) => `Pain described as: ${signs.join(', ')}`,
  panels: 'Body, curves and measures',
};
