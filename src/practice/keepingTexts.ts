import type { SentenceBook } from '../sensors/sentence.ts';

/** Whether a practice's recording is saved, for the person; `{why}` is the disk's reason. */
export const KEEPING_TEXTS = {
  'none-kept': 'Your practices are not being saved: {why}.',
  'not-kept': 'This practice is not being saved: {why}. You can continue anyway.',
  waits:
    'This practice cannot be saved now: {why}. You can continue. It stays in memory and is saved as soon as the problem is fixed.',
  'tried-again': 'This practice could not be saved: {why}. Retrying.',
  restored: 'Saving works again. This practice is saved completely, from its start.',
  note: 'Your note could not be saved: {why}.',
  pain: 'Your pain rating could not be saved: {why}.',
  plan: 'Your plan could not be saved: {why}.',
} as const satisfies SentenceBook;

export type KeepingKey = keyof typeof KEEPING_TEXTS;

/** Why a disk refuses. */
export const DISK_TEXTS = {
  full: 'the disk is full',
  large: 'the file is too large for this disk',
  quota: 'the disk quota is used up',
  'read-only': 'the disk is read-only',
  denied: 'no permission to write to the folder',
  gone: 'the folder no longer exists',
  broken: 'disk error',
} as const satisfies SentenceBook;

export type DiskKey = keyof typeof DISK_TEXTS;
