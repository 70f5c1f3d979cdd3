import type { AnalysisInput } from '../../src/analysis/contract.ts';
import { streamSession } from '../../src/sensors/sources/synthetic/index.ts';
import { writeSession } from '../../src/sessions/write/sessionWriter.ts';

export type SimulationOptions = Parameters<typeof streamSession>[0];

function* inputsOf(options: SimulationOptions): Generator<AnalysisInput[]> {
  for (const item of streamSession(options)) {
    if (item.kind === 'event') yield [{ kind: 'event', event: item.event }];
    if (item.kind === 'packet')
      yield item.packet.samples.map((sample) => ({ kind: 'sample', sample }));
  }
}

/** Writes a simulated session in the recording format. */
export const writeSimulated = (folder: string, options: SimulationOptions): Promise<void> =>
  writeSession(
    folder,
    {
      subject: `simulated${options.seed}`,
      session: '1',
      hand: options.hand ?? 'right',
      startedAt: null,
      simulated: true,
      tracks: { chest: { samplingHz: 100 }, trailArm: { samplingHz: 100 } },
    },
    inputsOf(options),
  );
