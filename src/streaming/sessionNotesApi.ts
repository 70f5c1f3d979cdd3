import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import Compile from 'typebox/compile';
import type { SessionSummary } from '../sessions/store/rows.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import { Refused } from './apiErrors.ts';
import { LONGEST_NOTE } from './sessionsContract.ts';

const pain = Type.Optional(Type.Union([Type.Integer({ minimum: 0, maximum: 10 }), Type.Null()]));
const NOTES = Type.Object(
  {
    note: Type.Optional(Type.String({ maxLength: LONGEST_NOTE })),
    painBefore: pain,
    painAfter: pain,
  },
  { additionalProperties: false },
);
const validator = Compile(NOTES);

/** What may be said of a session afterwards; fields that are left out stay. */
type NotesChange = Static<typeof NOTES>;

const WORDS: Readonly<Record<string, string>> = {
  note: `A note is text of ${LONGEST_NOTE} characters at most.`,
  painBefore: 'Pain before is a whole number from 0 to 10, or null where it was not asked.',
  painAfter: 'Pain after is a whole number from 0 to 10, or null where it was not asked.',
};

function checked(body: unknown): NotesChange {
  if (validator.Check(body)) return body;
  const [first] = validator.Errors(body);
  const field = first?.instancePath.split('/')[1] ?? '';
  throw new Refused(
    400,
    'bad-input',
    WORDS[field] ?? 'Only note, painBefore and painAfter can be changed.',
  );
}

const ID = Type.Object({ id: Type.String({ pattern: '^[A-Za-z0-9]{1,64}$' }) });

/** `PATCH /sessions/:id/notes`: the note and the pain of a session that has ended. */
export function notesRoute(
  api: FastifyInstance,
  store: () => SessionStore,
  edited?: (session: SessionSummary) => void,
): void {
  void api.register(async (notes) => {
    notes.removeAllContentTypeParsers();
    notes.addContentTypeParser(
      'application/json',
      { parseAs: 'string', bodyLimit: 32_768 },
      notes.getDefaultJsonParser('error', 'error'),
    );
    notes.patch<{ Params: Static<typeof ID> }>(
      '/sessions/:id/notes',
      { schema: { params: ID } },
      async ({ params, body }, reply) => {
        const session = await store().get(params.id);
        if (session === null || session.deleted)
          throw new Refused(404, 'not-found', 'Session not found.');
        if (session.state === 'running')
          throw new Refused(
            409,
            'recording',
            'This session is being recorded. End the practice first.',
          );
        const change = checked(body);
        await store().annotate(params.id, change);
        edited?.({ ...session, ...change });
        return reply.code(204).send();
      },
    );
  });
}
