import type { FastifyReply } from 'fastify';
import Type from 'typebox';
import type { Club, Me, Role } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { clearCookie, cookieName, setCookie } from '../access/cookies.ts';
import { newId } from '../access/secrets.ts';
import { personBehind, signIn } from '../access/signin.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { line, only } from '../parts/api.ts';

export const LOGIN = Type.String({ pattern: '^[A-Za-z0-9._-]{2,60}$' });
export const PASSWORD = Type.String({ minLength: 10, maxLength: 200 });
export const OWN = { name: line(80), login: LOGIN, password: PASSWORD };
export const LOGIN_BODY = only({
  login: Type.String({ maxLength: 200 }),
  password: Type.String({ maxLength: 200 }),
});

export async function clubOf(db: Db): Promise<Club> {
  const { name, demo } = await db
    .selectFrom('club')
    .select(['name', 'demo'])
    .executeTakeFirstOrThrow();
  return { name, demo: demo === 1 };
}

export async function meOf(
  db: Db,
  { id, name, role, csrf }: { id: string; name: string; role: Role; csrf: string },
): Promise<Me> {
  const person = await db
    .selectFrom('person')
    .select('login')
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  return { id, name, role, csrf, login: person.login ?? '', club: await clubOf(db) };
}

/** Signs a person in at this browser, with a cookie that nobody had before. */
export async function enter(context: HubContext, reply: FastifyReply, id: string): Promise<Me> {
  const { db, now } = context;
  const token = await signIn(db, id, now());
  setCookie(context, reply, cookieName, token, 30);
  const actor = await personBehind(db, token, now());
  if (actor?.kind !== 'person') throw new Refused(403, 'inactive', 'This account is closed.');
  return meOf(db, actor);
}

export const leave = (context: HubContext, reply: FastifyReply): void =>
  clearCookie(context, reply, cookieName);

interface NewPerson {
  readonly name: string;
  readonly login: string;
  readonly passwordHash: string;
  readonly role: Role;
  readonly coachId: string | null;
  readonly hand: 'left' | 'right';
}

const TAKEN = new Refused(409, 'login-taken', 'Sign-in name: already taken. Choose another one.');

/** @throws Refused where somebody else has the sign-in name */
export async function refuseTaken(db: Db, login: string, exceptId: string | null): Promise<void> {
  const found = await db
    .selectFrom('person')
    .select('id')
    .where('login', '=', login.toLowerCase())
    .executeTakeFirst();
  if (found !== undefined && found.id !== exceptId) throw TAKEN;
}

export async function makePerson({ db, now }: HubContext, asked: NewPerson): Promise<string> {
  await refuseTaken(db, asked.login, null);
  const { login, ...person } = asked;
  const id = newId();
  await db
    .insertInto('person')
    .values({
      ...person,
      id,
      login: login.toLowerCase(),
      active: 1,
      createdMs: now(),
    })
    .execute();
  return id;
}
