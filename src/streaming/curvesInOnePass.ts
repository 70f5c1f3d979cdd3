import { deflateSync, inflateSync } from 'node:zlib';
import type { AnalysisOutput } from '../analysis/contract.ts';
import { type RepetitionLabel, repetitionAt } from '../analysis/labels.ts';
import type { AnalysisResult, JudgedRepetition } from '../analysis/result.ts';
import type { CorrectedKind } from '../coaching/ledger.ts';
import { markedKind } from '../coaching/marks.ts';
import type { Plan } from '../coaching/plan.ts';
import { analyseSession } from '../sessions/analyseSession.ts';
import type { RecordedSession } from '../sessions/openSession.ts';
import { type CurveGatherer, curvesEndS, gatherCurves } from './reviewCurves.ts';
import type { RepetitionCurves } from './sessionsContract.ts';

type Frame = Extract<AnalysisOutput, { readonly kind: 'frame' }>;
type Taken = Omit<Extract<AnalysisOutput, { readonly kind: 'repetition' }>, 'kind'>;

/** Frames stay for so long, s: a repetition is told when it is over, and the analysis looks back 40 s at most. */
const KEEP_S = 45;
/** The old go in pieces. */
const PIECE_S = 10;

/**
 * The result of a session and the curves of its repetitions, from one run through the recording. The curves of
 * hundreds of repetitions are more than what they come from: they lie packed until they are gone through.
 */
export async function analyseWithCurves(
  session: RecordedSession,
  plan: Plan,
  labels: readonly RepetitionLabel[] = [],
): Promise<{ analysis: AnalysisResult; curves: Iterable<RepetitionCurves> }> {
  const marked = [...new Set(session.events.flatMap(({ type }) => markedKind(type) ?? []))];
  const gatherer = curvesInOnePass({ labels, marked });
  const emit = (output: AnalysisOutput): void => gatherer.take(output);
  const analysis = await analyseSession(session, plan, { labels, frames: true, emit });
  return { analysis, curves: gatherer.curves(analysis.repetitions) };
}

interface Growing {
  readonly index: number;
  readonly kind: JudgedRepetition['kind'];
  readonly endS: number;
  readonly gatherer: CurveGatherer;
}

/** What persons say that repetitions were: known before the pass begins. */
interface Said {
  readonly labels: readonly RepetitionLabel[];
  /** Kinds that marks in the recording name, whichever repetition they mean. */
  readonly marked: readonly CorrectedKind[];
}

/** Gathers curves while the repetitions themselves are still being found. */
interface OnePassGatherer {
  take(output: AnalysisOutput): void;
  /** Of the repetitions as they stand at the end. */
  curves(repetitions: readonly JudgedRepetition[]): Iterable<RepetitionCurves>;
}

/**
 * The same curves as a second pass with known repetitions would gather: the last frames are kept, and a repetition
 * that was found takes its beginning from them. One that a person says was of another kind is laid out as that, too.
 */
function curvesInOnePass(said: Said): OnePassGatherer {
  let recent: Frame[] = [];
  let growing: Growing[] = [];
  const done = new Map<string, Uint8Array>();
  const close = ({ index, kind, gatherer }: Growing): void => {
    const [curves] = gatherer.curves();
    if (curves !== undefined) done.set(keyOf({ index, kind }), packed(curves));
  };
  const takeFrame = (frame: Frame): void => {
    const { timeS } = frame.frame;
    recent.push(frame);
    if (timeS - (recent[0]?.frame.timeS ?? timeS) > KEEP_S + PIECE_S)
      recent = recent.filter((f) => timeS - f.frame.timeS <= KEEP_S);
    if (growing.length === 0) return;
    const over = growing.filter(({ endS }) => endS < timeS);
    if (over.length > 0) growing = growing.filter(({ endS }) => endS >= timeS);
    over.forEach(close);
    for (const { gatherer } of growing) gatherer.take(frame);
  };
  const takeRepetition = (taken: Taken): void => {
    for (const repetition of wantedOf(taken, said)) {
      const gatherer = gatherCurves([repetition]);
      for (const frame of recent) gatherer.take(frame);
      const { index, kind } = repetition;
      growing.push({ index, kind, endS: curvesEndS(repetition), gatherer });
    }
  };
  return {
    take(output) {
      if (output.kind === 'frame') takeFrame(output);
      else if (output.kind === 'repetition') takeRepetition(output);
    },
    curves(repetitions) {
      growing.splice(0).forEach(close);
      const found = repetitions.flatMap((r) => done.get(keyOf(r)) ?? []);
      return { [Symbol.iterator]: () => unpackedEach(found) };
    },
  };
}

const packed = (curves: RepetitionCurves): Uint8Array =>
  deflateSync(JSON.stringify(curves), { level: 1 });
const unpacked = (bytes: Uint8Array): RepetitionCurves =>
  JSON.parse(inflateSync(bytes).toString()) as RepetitionCurves;

function* unpackedEach(all: readonly Uint8Array[]): Generator<RepetitionCurves> {
  for (const bytes of all) yield unpacked(bytes);
}

const keyOf = ({ index, kind }: Pick<JudgedRepetition, 'index' | 'kind'>): string =>
  `${index} ${kind}`;

/** As detected, and as each kind that may be said of it. */
function wantedOf({ repetition, others }: Taken, { labels, marked }: Said): JudgedRepetition[] {
  const labelled = labels
    .filter(({ topS }) => repetitionAt([repetition], topS) !== null)
    .map(({ kind }) => kind);
  const kinds = new Set([...marked, ...labelled]);
  return [repetition, ...others.filter(({ kind }) => kinds.has(kind))];
}
