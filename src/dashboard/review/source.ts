import type {
  ApiError,
  RepetitionCurves,
  SessionDetail,
  SessionOverview,
} from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';

/** Where a review gets a session from; each answer may be refused with an Error that is one sentence. */
export interface ReviewSource {
  session(id: string): Promise<SessionDetail>;
  overview(id: string): Promise<SessionOverview>;
  curves(id: string, index: number): Promise<RepetitionCurves>;
}

/** A service that answers under `base` (no slash at its end) as the practice's own service does under /api. */
export function httpSource(base: string): ReviewSource {
  const at = (id: string, rest = ''): string => `${base}/sessions/${encodeURIComponent(id)}${rest}`;
  return {
    session: (id) => askAt<SessionDetail>(at(id)),
    overview: (id) => askAt<SessionOverview>(at(id, '/overview')),
    curves: (id, index) => askAt<RepetitionCurves>(at(id, `/curves/${index}`)),
  };
}

/** What a service refused, in its own sentence. */
export class RefusedAnswer extends Error {
  readonly status: number;
  /** All that came with the refusal. */
  readonly body: unknown;

  constructor(status: number, sentence: string, body: unknown = null) {
    super(sentence);
    this.status = status;
    this.body = body;
  }
}

/** @throws RefusedAnswer with the service's own sentence where it refuses, Error in words where it does not answer */
export const askAt = async <T>(url: string, init: RequestInit = {}): Promise<T> =>
  answerIn<T>(await reach(url, init));

/** @throws Error in words where nobody answers */
export const reach = (url: string, init: RequestInit): Promise<Response> =>
  fetch(url, init).catch((error: unknown) => {
    if (init.signal?.aborted) throw error;
    throw new Error(t.error.noAnswer);
  });

/** @throws RefusedAnswer */
export async function answerIn<T>(response: Response): Promise<T> {
  const body: unknown = response.status === 204 ? null : await response.json().catch(() => null);
  if (!response.ok)
    throw new RefusedAnswer(
      response.status,
      t.said.refusal(sentenceOf(body) ?? `${response.status}`),
      body,
    );
  return body as T;
}

function sentenceOf(body: unknown): string | null {
  const message = (body as Partial<ApiError> | null)?.error?.message;
  return typeof message === 'string' ? message : null;
}
