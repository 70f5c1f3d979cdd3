import { Ajv } from 'ajv';
import type { FastifyInstance } from 'fastify';

/** An unknown field is a mistake and is said, not dropped. */
const COMMON = { removeAdditional: false, useDefaults: true } as const;
const body = new Ajv(COMMON);
/** What stands in an address is always text. */
const address = new Ajv({ ...COMMON, coerceTypes: 'array' });

/** Takes a body as it is, where the default would make a number 0 of `null` and text of a number. */
export function validateStrictly(app: FastifyInstance): void {
  app.setValidatorCompiler(({ schema, httpPart }) =>
    (httpPart === 'body' ? body : address).compile(schema as object),
  );
}
