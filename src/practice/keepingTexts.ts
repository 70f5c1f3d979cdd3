import type { SentenceBook } from '../sensors/sentence.ts';

/** What becomes of a practice's recording, for the person; `{why}` is the disk's reason. */
export const KEEPING_TEXTS = {
  'none-kept': 'Your practices are not being kept: {why}.',
  'not-kept': 'This practice is not being kept: {why}. You can go on all the same.',
  waits:
    'This practice cannot be saved now: {why}. Go on; it is kept in memory and saved as soon as that is mended.',
  'tried-again': 'This practice could not be saved: {why}. It is tried again.',
  restored:
    'The disk takes data again: this practice is kept from its beginning, nothing of it is missing.',
  note: 'Your note could not be kept: {why}.',
  pain: 'Your pain could not be kept: {why}.',
  plan: 'Your plan could not be kept: {why}.',
} as const satisfies SentenceBook;

export type KeepingKey = keyof typeof KEEPING_TEXTS;

/** Why a disk refuses. */
export const DISK_TEXTS = {
  full: 'the disk is full',
  large: 'no file may be larger here',
  quota: 'the disk quota is used up',
  'read-only': 'the disk is read-only',
  denied: 'the folder may not be written: check its permissions',
  gone: 'the folder is gone',
  broken: 'the disk reports an error',
} as const satisfies SentenceBook;

export type DiskKey = keyof typeof DISK_TEXTS;
