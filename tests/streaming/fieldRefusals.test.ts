import { Ajv, type ErrorObject } from 'ajv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recognise } from '../../src/sensors/sentence.ts';
import {
  FIELD_LABELS,
  FIELD_REFUSALS,
  type FieldLabelKey,
  fieldRefusal,
} from '../../src/streaming/fieldRefusals.ts';
import { type TestHub, testHub } from '../hub/testHub.ts';

interface Schema {
  readonly properties?: Readonly<Record<string, unknown>>;
  readonly required?: readonly string[];
}

interface Operation {
  readonly requestBody?: { content: Readonly<Record<string, { schema: Schema }>> };
}

const ajv = new Ajv({ strict: false });
const BROKEN: readonly unknown[] = [
  null,
  '',
  ' ',
  'x',
  '!'.repeat(9),
  'x'.repeat(200_000),
  -1e12,
  1e12,
  0.5,
  true,
  [],
  {},
];

/** What is said of a value of one field alone. */
function refusalsOf(schema: Schema, name: string): readonly string[] {
  const alone = {
    type: 'object',
    additionalProperties: false,
    properties: { [name]: schema.properties?.[name] },
    required: (schema.required ?? []).filter((r) => r === name),
  };
  const check = ajv.compile(alone);
  const bodies = [{}, ...BROKEN.map((value) => ({ [name]: value }))];
  return bodies.flatMap((body) =>
    check(body) ? [] : [fieldRefusal(check.errors as ErrorObject[])],
  );
}

let hub: TestHub;
let bodies: readonly (readonly [route: string, schema: Schema])[] = [];
beforeAll(async () => {
  hub = await testHub();
  const { paths } = (await hub.ask(null, { url: '/docs/json' })).json<{
    paths: Record<string, Record<string, Operation>>;
  }>();
  bodies = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).flatMap(([method, { requestBody }]) =>
      Object.values(requestBody?.content ?? {}).map(
        ({ schema }) => [`${method} ${path}`, schema] as const,
      ),
    ),
  );
});
afterAll(() => hub.close());

describe('a field that is not as it should be', () => {
  it('is named in plain words with the reason, on every route of the hub and each way it can be wrong', () => {
    let said = 0;
    for (const [route, schema] of bodies) {
      for (const name of Object.keys(schema.properties ?? {})) {
        const label = FIELD_LABELS[name as FieldLabelKey];
        expect(label, `${route} ${name} has no label`).toBeDefined();
        for (const sentence of refusalsOf(schema, name)) {
          said += 1;
          const found = recognise(FIELD_REFUSALS, sentence);
          expect(found?.values['field'], `${route} ${name}: ${sentence}`).toBe(label);
          expect(sentence, route).not.toMatch(/\/|undefined|object Object|\\/);
        }
      }
    }
    expect(said).toBeGreaterThan(100);
  });

  it('says the bound', async () => {
    const ask = async (payload: object): Promise<string> => {
      const request = { url: '/api/me/password', method: 'POST', payload } as const;
      return (await hub.ask('sam', request)).json<{ error: { message: string } }>().error.message;
    };
    expect(await ask({ current: 'x', next: 'short' })).toBe(
      'New password: at least 10 characters.',
    );
    expect(await ask({ current: 'x' })).toBe('New password: required.');
    expect(await ask({ current: 'x', next: 7 })).toBe('New password: must be text.');
    expect(await ask({ current: 'x', next: 'long enough, this', tempo: 3 })).toBe(
      'Unknown field: Tempo.',
    );
  });
});
