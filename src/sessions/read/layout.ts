import type { SensorRole } from '../../sensors/sample.ts';
import type { SessionFiles } from '../files/sessionFiles.ts';
import { SessionError } from '../sessionError.ts';

export interface TrackFiles {
  readonly role: SensorRole;
  readonly motion: string;
  readonly sidecar: string;
  readonly channels: string;
}

/** Where the files of the one session lie. */
export interface Layout {
  readonly subject: string;
  /** Empty where the dataset has no session level. */
  readonly session: string;
  readonly task: string;
  readonly scans: string;
  readonly events: string;
  readonly tracks: readonly TrackFiles[];
}

const FOLDER = /^sub-([A-Za-z0-9]+)\/(?:ses-([A-Za-z0-9]+)\/)?motion$/;
const SYSTEM = /^tracksys-([A-Za-z0-9]+)$/;
const LABEL = /^[a-z]+-[A-Za-z0-9]+$/;

interface Found {
  readonly path: string;
  readonly subject: string;
  readonly session: string;
  readonly stem: string;
  readonly trackingSystem: string;
}

export function findLayout(files: SessionFiles): Layout {
  const found = files.names.flatMap(motionFile);
  const first = found[0];
  if (first === undefined) throw noMotion(files.names);
  const stems = [...new Set(found.map((f) => f.stem))];
  if (stems.length > 1)
    throw new SessionError(
      'several-sessions',
      `holds ${stems.length} recordings (${stems.slice(0, 3).join(', ')} ...): give a folder with one`,
    );
  const task = /_task-([A-Za-z0-9]+)/.exec(first.stem)?.[1];
  if (task === undefined)
    throw new SessionError('not-a-session', 'the name lacks task-...', { file: first.path });
  const folder = first.path.slice(0, first.path.lastIndexOf('motion/'));
  const id = first.session === '' ? '' : `_ses-${first.session}`;
  return {
    subject: first.subject,
    session: first.session,
    task,
    scans: `${folder}sub-${first.subject}${id}_scans.tsv`,
    events: `${folder}motion/${first.stem}_events.tsv`,
    tracks: (['chest', 'trailArm', 'club'] as const).flatMap((role) => trackFiles(role, found)),
  };
}

function motionFile(path: string): Found[] {
  const slash = path.lastIndexOf('/');
  const parts = path.slice(slash + 1).split('_');
  if (parts.pop() !== 'motion.tsv') return [];
  // from here on all parts are labels: key-value
  const labelsFrom = parts.findLastIndex((part) => !LABEL.test(part)) + 1;
  const at = parts.findIndex((part, k) => k >= labelsFrom && SYSTEM.test(part));
  const folder = FOLDER.exec(path.slice(0, Math.max(0, slash)));
  const trackingSystem = SYSTEM.exec(parts[at] ?? '')?.[1];
  if (folder === null || trackingSystem === undefined || !parts[0]?.startsWith('sub-')) return [];
  const [, subject = '', session = ''] = folder;
  return [{ path, subject, session, stem: parts.slice(0, at).join('_'), trackingSystem }];
}

function trackFiles(role: SensorRole, found: readonly Found[]): TrackFiles[] {
  const mine = found.filter((f) => f.trackingSystem.toLowerCase() === role.toLowerCase());
  if (mine.length > 1)
    throw new SessionError('several-sessions', `holds ${mine.length} tracks of ${role}`);
  const [track] = mine;
  if (track === undefined) {
    if (role === 'club') return [];
    throw new SessionError(
      'one-sensor',
      `the track of the ${role === 'chest' ? 'chest' : 'trail arm'} sensor is missing (tracksys-${role}_motion.tsv): both sensors are needed`,
    );
  }
  const base = track.path.slice(0, -'_motion.tsv'.length);
  return [
    { role, motion: track.path, sidecar: `${base}_motion.json`, channels: `${base}_channels.tsv` },
  ];
}

function noMotion(names: readonly string[]): SessionError {
  const near = names.find((n) => n.endsWith('_motion.tsv'));
  if (near === undefined)
    return new SessionError('missing-file', 'there is no ..._tracksys-..._motion.tsv in it');
  return new SessionError(
    'not-a-session',
    'must be named sub-<S>/ses-<T>/motion/sub-<S>_ses-<T>_task-..._tracksys-..._motion.tsv, labels of letters and digits only',
    { file: near },
  );
}
