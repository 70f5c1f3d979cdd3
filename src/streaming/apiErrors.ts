import type { FastifyError, FastifyInstance, FastifyRequest } from 'fastify';
import { SessionError } from '../sessions/sessionError.ts';
import { fieldRefusal } from './fieldRefusals.ts';
import type { ApiError } from './sessionsContract.ts';

/** A refusal with its HTTP status, said in a sentence. */
export class Refused extends Error {
  readonly status: number;
  readonly code: string;

  constructor(status: number, code: string, message: string) {
    super(message);
    this.status = status;
    this.code = code;
  }
}

const STATUS: Partial<Record<SessionError['code'], number>> = {
  'not-found': 404,
  exists: 409,
  'in-use': 409,
  'missing-calibration': 409,
  'zip-limit': 413,
  'too-large': 413,
  'broke-off': 503,
  'write-failed': 503,
};

const ended = (text: string): string => `${text}${/[.!?]$/.test(text) ? '' : '.'}`;

/** First letter large, a full stop at the end. */
export const sentence = (text: string): string =>
  ended(`${text.charAt(0).toUpperCase()}${text.slice(1)}`);

/** The same; a sentence that begins with a file's name keeps its spelling. */
export const sentenceOf = ({ message, place }: SessionError): string =>
  place.file === undefined ? sentence(message) : ended(message);

/** What a route says where the body came as something else. */
interface SentAs {
  readonly code: string;
  readonly message: string;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** JSON where it is left out. */
    sentAs?: SentAs;
  }
}

const AS_JSON: SentAs = { code: 'not-json', message: 'Send this as JSON (application/json).' };
export const AS_ZIP: SentAs = {
  code: 'not-a-zip',
  message: 'Send the session as a .zip file (application/zip).',
};

function refusalOf(
  error: FastifyError | SessionError | Refused,
  sentAs?: SentAs,
  tell?: Tell,
): Refused {
  if (error instanceof Refused) return error;
  if (error instanceof SessionError)
    return new Refused(STATUS[error.code] ?? 400, error.code, sentenceOf(error));
  if (error.validation !== undefined)
    return new Refused(400, 'bad-input', fieldRefusal(error.validation));
  const { statusCode = 500 } = error;
  if (statusCode === 415) {
    const { code, message } = sentAs ?? AS_JSON;
    return new Refused(415, code, message);
  }
  if (statusCode < 500) return new Refused(statusCode, 'bad-input', sentence(error.message));
  if (tell === undefined) return new Refused(500, 'failed', `Internal error: ${error.message}.`);
  tell(`Failed: ${error.stack ?? error.message}`);
  return new Refused(500, 'failed', 'Internal error. See the terminal for details.');
}

const body = ({ code, message }: Refused): ApiError => ({ error: { code, message } });

type Tell = (sentence: string) => void;

/** Every refusal of the API as `ApiError`. With `tell` the terminal hears what failed inside, and nobody else. */
export function answerErrors(api: FastifyInstance, tell?: Tell): void {
  api.setErrorHandler((error: FastifyError, request, reply) => {
    const refused = refusalOf(error, request.routeOptions.config.sentAs, tell);
    return reply.code(refused.status).send(body(refused));
  });
  api.setNotFoundHandler((_request, reply) =>
    reply.code(404).send(body(new Refused(404, 'not-found', 'Not found.'))),
  );
}

/** A page of another site may not change anything here. */
export const refuseOtherSites = (request: FastifyRequest): Promise<void> =>
  refuseSitesBut(null, request);

/** The same, where a proxy may hand on another `host`: `own` is the origin that pages are reached by. */
export async function refuseSitesBut(
  own: string | null,
  { method, headers }: FastifyRequest,
): Promise<void> {
  if (method === 'GET' || method === 'HEAD') return;
  const { origin, host } = headers;
  const site = headers['sec-fetch-site'];
  const foreignOrigin =
    origin !== undefined &&
    origin !== own &&
    !(URL.canParse(origin) && new URL(origin).host === host);
  const foreignSite = site !== undefined && site !== 'same-origin' && site !== 'none';
  if (foreignOrigin || foreignSite)
    throw new Refused(403, 'another-site', 'Refused: the request came from another site.');
}
