import type { RateLimitPluginOptions } from '@fastify/rate-limit';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Refused } from '../../streaming/apiErrors.ts';
import { MonotonicStore } from './limitStore.ts';
import { networkOf } from './network.ts';

export const tooMany = (seconds: number): Refused =>
  new Refused(429, 'too-many', `Too many attempts. Wait ${seconds} s and try again.`);

/** Tries of one address at what could be guessed. A choice. */
export const STRICT = { max: 10, timeWindow: '1 minute' } as const;

/** What one person, machine or, before signing in, one address may ask. A choice, far above what pages need. */
export const LIMITS: RateLimitPluginOptions = {
  global: true,
  store: MonotonicStore,
  max: 1200,
  timeWindow: '1 minute',
  keyGenerator: ({ actor, ip }) => actor?.id ?? networkOf(ip),
  errorResponseBuilder: (_request, { ttl }) => tooMany(Math.ceil(ttl / 1000)),
};

/** Tries at one sign-in name from one address, right ones too. A choice. */
const AT_ONE_NAME = { max: 10, timeWindow: 15 * 60_000 };

const nameAndAddress = ({ body, ip }: FastifyRequest): string => {
  const { login } = body as { login: string };
  return `${login.trim().toLowerCase()} ${networkOf(ip)}`;
};

/**
 * Counts a sign-in of a request whose body holds `login`.
 * @returns seconds to wait, 0 where it may go on
 */
export function signInTries(api: FastifyInstance): (request: FastifyRequest) => Promise<number> {
  const count = api.createRateLimit({ ...AT_ONE_NAME, keyGenerator: nameAndAddress });
  return async (request) => {
    const counted = await count(request);
    return counted.isAllowed || !counted.isExceeded ? 0 : counted.ttlInSeconds;
  };
}
