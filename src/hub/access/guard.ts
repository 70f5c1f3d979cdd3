import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Refused } from '../../streaming/apiErrors.ts';
import { type HubContext, isSecure } from '../context.ts';
import { type Access, type Actor, rule } from './access.ts';
import { cookieName } from './cookies.ts';
import { PARAMETER, ownerOf } from './owner.ts';
import { sameText } from '../../streaming/secrets.ts';
import { machineBehind, personBehind } from './signin.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    access?: Access;
  }
  interface FastifyRequest {
    actor: Actor | null;
    /** Id of the student whose thing the address names. */
    about: string | null;
  }
}

/** One route as the guard knows it. */
export interface GuardedRoute {
  readonly method: string;
  readonly url: string;
  readonly access: Access;
}

async function actorOf(context: HubContext, request: FastifyRequest): Promise<Actor | null> {
  const bearer = /^Bearer ([\w-]{20,100})$/.exec(request.headers.authorization ?? '')?.[1];
  if (bearer !== undefined) return machineBehind(context.db, bearer, context.now());
  const token = request.cookies[cookieName(isSecure(context.settings))];
  return token === undefined ? null : personBehind(context.db, token, context.now());
}

const changes = ({ method }: FastifyRequest): boolean => method !== 'GET' && method !== 'HEAD';

/** A page of another site cannot read the token that a change must carry. */
function checkCsrf(request: FastifyRequest): void {
  const { actor } = request;
  if (actor?.kind !== 'person' || !changes(request)) return;
  const given = request.headers['x-csrf-token'];
  if (typeof given !== 'string' || !sameText(given, actor.csrf))
    throw new Refused(403, 'csrf', 'This page is out of date. Reload it and try again.');
}

async function check(context: HubContext, request: FastifyRequest): Promise<void> {
  const { access } = request.routeOptions.config;
  if (access === undefined) return; // an address that is none
  const subject = 'of' in access ? access.of : null;
  const params = request.params as Record<string, string>;
  const id = subject === null ? undefined : params[PARAMETER[subject]];
  const owner =
    subject === null || id === undefined || request.actor === null
      ? null
      : await ownerOf(context.db, subject, id);
  request.about = owner?.studentId ?? null;
  const ruling = rule(access, request.actor, owner);
  if (ruling === 'sign-in') throw new Refused(401, 'sign-in', 'Sign in first.');
  if (ruling === 'hidden') throw new Refused(404, 'not-found', 'Not found.');
  if (ruling === 'forbidden')
    throw new Refused(403, 'forbidden', 'Your account has no access to this.');
  if (access.who !== 'anyone') checkCsrf(request);
}

/**
 * Lets nobody through who may not: finds out who asks, whose the thing is, and applies the route's rule before the
 * body is read. To be set up before the routes; a route without a rule is a programmer's error and throws.
 * @returns the routes, as they are registered
 */
export function guard(api: FastifyInstance, context: HubContext): readonly GuardedRoute[] {
  const routes: GuardedRoute[] = [];
  api.decorateRequest('actor', null);
  api.decorateRequest('about', null);
  api.addHook('onRoute', ({ method, url, config }) => {
    const access = config?.access;
    if (access === undefined)
      throw new Error(`${String(method)} ${url} says nobody who may use it`);
    for (const one of [method].flat())
      if (one !== 'HEAD') routes.push({ method: one, url, access });
  });
  api.addHook('onRequest', async (request) => {
    request.actor = await actorOf(context, request);
    await check(context, request);
  });
  return routes;
}

/** The person behind a request whose route asks for one. */
export function person(request: FastifyRequest): Extract<Actor, { kind: 'person' }> {
  if (request.actor?.kind === 'person') return request.actor;
  throw new Error('the route must ask for a person');
}

export function machine(request: FastifyRequest): Extract<Actor, { kind: 'machine' }> {
  if (request.actor?.kind === 'machine') return request.actor;
  throw new Error('the route must ask for a machine');
}
