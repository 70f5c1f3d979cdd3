import { detectedKind } from '../../../coaching/asSaid.ts';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { t } from '../../strings/strings.ts';
import { type Corrections, NOT_CORRECTED, markOfRepetition } from '../view.ts';

const words = t.review.strip;

/** A repetition in words: "4: rehearsal not passed, at 1:12; noted: …". */
export function nameOf(
  r: JudgedRepetition,
  corrected: Corrections = NOT_CORRECTED,
  noted: string | undefined = undefined,
): string {
  const mark = t.ledger.entry[markOfRepetition(r, corrected)];
  const notes = [
    ...(corrected.has(r.index) ? [words.corrected(words.kinds[detectedKind(r)])] : []),
    ...(noted === undefined ? [] : [words.noted(noted)]),
  ];
  return words.name(r.index, mark, t.sessions.at(r.topS)) + words.plus(notes);
}
