import { useCallback } from 'preact/hooks';
import { type Answer, useAnswer } from '../review/useAnswer.ts';
import { ask } from './api.ts';

/** Something of the service's, loaded when `path` changes or on `again`. */
export const useLoad = <T>(path: string): Answer<T> =>
  useAnswer<T>(useCallback(() => ask<T>(path), [path]));
