import type { LogAbout, LogPerson } from '../../../streaming/hubContract/log.ts';
import { h } from '../../strings/hub.ts';

const words = h.club.log;

/** The name of today, or that somebody was deleted, with the log's number: "deleted student 7". */
export const personText = ({ name, number, role }: LogPerson): string =>
  name ?? words.deleted.person(number, role);

/** What an entry of the log is about, in words. */
export function aboutText(about: LogAbout): string {
  const { person, coach, session, machine, invite, role, repetition, sessions, format, how } =
    about;
  const who = person === undefined ? null : personText(person);
  return [
    who !== null && coach !== undefined ? words.moved(who, personText(coach)) : who,
    session &&
      (session.student === null
        ? words.deleted.session(session.number)
        : words.session(session.number, session.student)),
    repetition === undefined ? null : words.repetition(repetition),
    machine && (machine.name ?? words.deleted.machine(machine.number)),
    role === undefined ? null : words.roles[role],
    invite && (invite.name ?? words.deleted.invite(invite.number)),
    sessions === undefined ? null : words.sessions(sessions),
    format,
    how === undefined ? null : words.hows[how],
  ]
    .filter((part) => typeof part === 'string')
    .join(', ');
}
