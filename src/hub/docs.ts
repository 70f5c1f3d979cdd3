import swagger, { type SwaggerTransform } from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import type { FastifyInstance, RouteOptions } from 'fastify';
import Type from 'typebox';
import { VERSION } from '../sessions/version.ts';
import { ANSWERS } from './answers.ts';
import type { Access } from './access/access.ts';

/** What every refusal looks like (`ApiError`). */
const REFUSAL = Type.Object({
  error: Type.Object({
    code: Type.String({ description: 'For programs.' }),
    message: Type.String({ description: 'One sentence, for people.' }),
  }),
});

const WHO: Readonly<Record<Access['who'], string>> = {
  anyone: 'Needs no account.',
  'signed-in': 'Whoever is signed in.',
  coach: 'Coaches.',
  owner: 'The owner of the club.',
  student: 'A student, about themselves.',
  'student-or-coach': 'The student whose it is, and their coach.',
  'coach-of': 'The coach of the student whose it is.',
  machine: 'A student’s paired machine.',
};

const OF_PEOPLE = /^(setup|login|logout|me|invites|invitation|pair)$/;
const OF_CLUB = /^(club|coaches|log)$/;

function tagOf(url: string): string {
  const first = url.split('/')[2] ?? '';
  if (OF_PEOPLE.test(first)) return 'accounts';
  return OF_CLUB.test(first) ? 'club' : first;
}

const securityOf = ({ who }: Access): Record<string, string[]>[] =>
  who === 'anyone' ? [] : who === 'machine' ? [{ machine: [] }] : [{ cookie: [], csrf: [] }];

/** Says of each route who may use it and how it refuses; the checks themselves are not changed by it. */
const describe: SwaggerTransform = ({ schema, url, route }) => {
  const { access } = (route as RouteOptions).config ?? {};
  if (access === undefined) return { schema: { ...schema, hide: true }, url };
  const own = { description: WHO[access.who], tags: [tagOf(url)], security: securityOf(access) };
  const answer = ANSWERS[`${String((route as RouteOptions).method)} ${url}`];
  const response = { '2xx': { description: 'Done.', ...answer }, '4xx': REFUSAL };
  return { schema: { ...own, response, ...schema }, url };
};

const STATIC_CSP = {
  'default-src': ["'self'"],
  'img-src': ["'self'", 'data:'],
  'object-src': ["'none'"],
  'base-uri': ["'none'"],
  'form-action': ["'self'"],
  'frame-ancestors': ["'none'"],
};

/** The API's description, made from the schemas of its routes; at /docs, and as JSON at /docs/json. To be set up before the routes. */
export async function describeApi(app: FastifyInstance, secure: boolean): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Stillcatch hub', version: VERSION },
      components: {
        securitySchemes: {
          cookie: {
            type: 'apiKey',
            in: 'cookie',
            name: secure ? '__Host-stillcatch' : 'stillcatch',
          },
          csrf: { type: 'apiKey', in: 'header', name: 'x-csrf-token' },
          machine: { type: 'http', scheme: 'bearer' },
        },
      },
    },
    transform: describe,
  });
  await app.register(swaggerUi, {
    routePrefix: '/docs',
    staticCSP: STATIC_CSP,
    uiConfig: { layout: 'BaseLayout', validatorUrl: null, supportedSubmitMethods: ['get'] },
  });
}
