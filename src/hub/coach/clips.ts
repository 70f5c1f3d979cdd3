import { createReadStream, createWriteStream } from 'node:fs';
import { rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { FastifyInstance, FastifyReply } from 'fastify';
import Type from 'typebox';
import { Refused } from '../../streaming/apiErrors.ts';
import { type Clip, MAX_CLIP_BYTES } from '../../streaming/hubContract/review.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { config, line, one, only, orNull, typed } from '../parts/api.ts';

const OF_CLIP = config({ who: 'student-or-coach', of: 'clip' });
const TYPES = ['video/mp4', 'video/webm'] as const;
type ClipType = (typeof TYPES)[number];

const AS_FILM = {
  code: 'no-film',
  message:
    'A film is sent as mp4 (video/mp4) or webm (video/webm). Where a phone makes .mov files, set its camera to the format that most devices play (H.264), or convert the film to mp4.',
};
const noFilm = (): Refused => new Refused(415, AS_FILM.code, AS_FILM.message);

/** What the first bytes must say: `ftyp` in an mp4 (ISO/IEC 14496-12), the EBML sign in a webm (RFC 8794). */
function isFilm(head: Buffer, type: ClipType): boolean {
  if (type === 'video/mp4') {
    const sign = head.subarray(4, 12).toString('latin1');
    // the brand of a .mov that was only renamed
    return sign.startsWith('ftyp') && sign !== 'ftypqt  ';
  }
  // The doc type tells webm from other Matroska.
  return (
    head.subarray(0, 4).toString('hex') === '1a45dfa3' && head.subarray(0, 64).includes('webm')
  );
}

/** Of one session; a choice, so that nobody fills the disk. */
const MOST_CLIPS = 10;

async function refuseMany(db: Db, sessionId: string): Promise<void> {
  const { n } = await db
    .selectFrom('clip')
    .select((e) => e.fn.countAll<number>().as('n'))
    .where('sessionId', '=', sessionId)
    .executeTakeFirstOrThrow();
  if (Number(n) >= MOST_CLIPS)
    throw new Refused(409, 'too-many', `At most ${MOST_CLIPS} films per session.`);
}

/** In so many bytes it stands what a file is. */
const HEAD_BYTES = 64;

/** What comes, once its first bytes are there and are a film's, in whatever pieces they came. */
async function* film(body: Readable, type: ClipType): AsyncGenerator<Buffer> {
  let head: Buffer | null = Buffer.alloc(0);
  for await (const chunk of body.iterator({ destroyOnReturn: false })) {
    const piece = chunk as Buffer;
    if (head === null) yield piece;
    else {
      head = Buffer.concat([head, piece]);
      if (head.length < HEAD_BYTES) continue;
      if (!isFilm(head, type)) throw noFilm();
      yield head;
      head = null;
    }
  }
  if (head === null) return;
  if (head.length === 0) throw new Refused(400, 'empty', 'No file received.');
  if (!isFilm(head, type)) throw noFilm();
  yield head;
}

async function receive(body: Readable, path: string, type: ClipType): Promise<number> {
  let bytes = 0;
  try {
    await pipeline(
      async function* () {
        for await (const piece of film(body, type)) {
          bytes += piece.length;
          if (bytes > MAX_CLIP_BYTES) throw new Refused(413, 'too-large', 'The film is too large.');
          yield piece;
        }
      },
      createWriteStream(path, { mode: 0o600 }),
    );
  } finally {
    body.resume();
  }
  return bytes;
}

/** One range of a file (RFC 9110, section 14), or all of it. */
async function sendFile(
  reply: FastifyReply,
  path: string,
  type: string,
  asked: string | undefined,
): Promise<FastifyReply> {
  const { size } = await stat(path).catch(() => {
    throw new Refused(404, 'not-found', 'The hub no longer has this film.');
  });
  const [, from = '', to = ''] = /^bytes=(\d*)-(\d*)$/.exec(asked ?? '') ?? [];
  reply.type(type).header('accept-ranges', 'bytes').header('cache-control', 'private');
  if (from === '' && to === '')
    return reply.header('content-length', size).send(createReadStream(path));
  const start = from === '' ? Math.max(0, size - Number(to)) : Number(from);
  const end = from === '' || to === '' ? size - 1 : Math.min(size - 1, Number(to));
  if (start > end) return reply.code(416).header('content-range', `bytes */${size}`).send();
  return reply
    .code(206)
    .header('content-range', `bytes ${start}-${end}/${size}`)
    .header('content-length', end - start + 1)
    .send(createReadStream(path, { start, end }));
}

function takeRoute(api: FastifyInstance, { db, now, places }: HubContext): void {
  void api.register(async (films) => {
    films.removeAllContentTypeParsers();
    films.addContentTypeParser([...TYPES], (_request, payload, done) => done(null, payload));
    typed(films).post(
      '/sessions/:sessionId/clips',
      {
        config: { ...config({ who: 'student-or-coach', of: 'session' }), sentAs: AS_FILM },
        bodyLimit: MAX_CLIP_BYTES,
        schema: { params: one('session'), querystring: Type.Object({ name: line(200) }) },
      },
      async (request, reply): Promise<Clip> => {
        const type = TYPES.find((t) => request.headers['content-type']?.startsWith(t));
        if (type === undefined) throw noFilm();
        await refuseMany(db, request.params.sessionId!);
        const id = newId();
        const part = join(places.clips, `${id}.part`);
        const { id: byId, name: by } = person(request);
        try {
          const bytes = await receive(request.body as Readable, part, type);
          await rename(part, join(places.clips, id));
          const clip = { id, name: request.query.name, type, bytes, startS: null, view: null };
          await db
            .insertInto('clip')
            .values({ ...clip, sessionId: request.params.sessionId!, byId, createdMs: now() })
            .execute();
          reply.code(201);
          return { ...clip, by };
        } finally {
          await rm(part, { force: true });
        }
      },
    );
  });
}

/** Films beside the numbers. */
export function clips(api: FastifyInstance, context: HubContext): void {
  const { db, places } = context;
  takeRoute(api, context);
  const clipOf = (id: string) =>
    db
      .selectFrom('clip')
      .innerJoin('person', 'person.id', 'clip.byId')
      .select([
        'clip.id',
        'clip.name',
        'clip.type',
        'clip.bytes',
        'clip.startS',
        'clip.view',
        'person.name as by',
      ])
      .where('clip.id', '=', id)
      .executeTakeFirstOrThrow();
  typed(api).get(
    '/clips/:clipId',
    { config: OF_CLIP, schema: { params: one('clip') } },
    async (request, reply) => {
      const { id, type } = await clipOf(request.params.clipId!);
      return sendFile(reply, join(places.clips, id), type, request.headers.range);
    },
  );
  typed(api).patch(
    '/clips/:clipId',
    {
      config: OF_CLIP,
      schema: {
        params: one('clip'),
        body: only({
          startS: Type.Optional(orNull(Type.Number({ minimum: -1e5, maximum: 1e5 }))),
          view: Type.Optional(
            orNull(Type.Union([Type.Literal('face-on'), Type.Literal('down-the-line')])),
          ),
        }),
      },
    },
    async ({ params, body }): Promise<Clip> => {
      const id = params.clipId!;
      if (Object.keys(body).length > 0)
        await db
          .updateTable('clip')
          .set(body as Partial<Pick<Clip, 'startS' | 'view'>>)
          .where('id', '=', id)
          .execute();
      return clipOf(id);
    },
  );
  typed(api).delete(
    '/clips/:clipId',
    { config: OF_CLIP, schema: { params: one('clip') } },
    async ({ params }, reply) => {
      await db.deleteFrom('clip').where('id', '=', params.clipId!).execute();
      await rm(join(places.clips, params.clipId!), { force: true });
      return reply.code(204).send();
    },
  );
}
