import { MAX_CLIP_BYTES } from '../../../streaming/hubContract/review.ts';
import { h } from '../../strings/hub.ts';

const words = h.session.clips;

export const MB = 1024 * 1024;
export const TYPES: readonly string[] = ['video/mp4', 'video/webm'];

/** Why a file cannot be attached; `null` where it can. */
export function unfit(file: Pick<File, 'type' | 'size'>): string | null {
  if (!TYPES.includes(file.type)) return words.wrongType;
  return file.size > MAX_CLIP_BYTES ? words.tooBig(MAX_CLIP_BYTES / MB) : null;
}
