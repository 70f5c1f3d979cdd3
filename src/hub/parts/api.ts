import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { LINE_PATTERN, WORDS_PATTERN } from '../../sensors/plainText.ts';
import type { Access, Subject } from '../access/access.ts';
import { PARAMETER } from '../access/owner.ts';

/** Routes whose schemas give the types of what they take. */
export const typed = (api: FastifyInstance) => api.withTypeProvider<TypeBoxTypeProvider>();

export const config = (access: Access) => ({ access });

/** Nothing but what is named is taken. */
export const only = <T extends Parameters<typeof Type.Object>[0]>(fields: T) =>
  Type.Object(fields, { additionalProperties: false });

/** `null` says something of its own. */
export const orNull = <T extends Parameters<typeof Type.Union>[0][number]>(type: T) =>
  Type.Union([type, Type.Null()]);

export const ID = Type.String({ pattern: '^[A-Za-z0-9-]{1,64}$' });

/** Of a session, as the student's computer names it. */
export const CLIENT_ID = Type.String({ pattern: '^[A-Za-z0-9]{1,64}$' });

/** Parameters of an address that names one thing. */
export const one = (subject: Subject) => Type.Object({ [PARAMETER[subject]]: ID });

/** A name or a line, by the one rule for lines; not only spaces. */
export const line = (most: number) =>
  Type.String({ minLength: 1, maxLength: most, pattern: LINE_PATTERN });

/** Words of several lines. */
export const words = (most: number) =>
  Type.String({ minLength: 1, maxLength: most, pattern: WORDS_PATTERN });
