import type { RefObject } from 'preact';
import type {
  Clip,
  Comment,
  HubSession,
  LabelKind,
  NewComment,
  TextBlock,
} from '../../../streaming/hubContract/review.ts';
import type { ReviewView } from '../../review/view.ts';
import type { HubClient } from '../client/client.ts';
import { pinOf } from './threads.ts';

/** What the parts of a session's page share. */
export interface SessionDesk {
  readonly session: HubSession;
  readonly isCoach: boolean;
  /** The coach's own ready texts. */
  readonly blocks: readonly TextBlock[];
  readonly view: ReviewView;
  readonly setView: (view: ReviewView) => void;
  /** The student's words whose answer box opens by itself: id of a comment, or `note`. */
  readonly answerTo: string | null;
  /** The film that is shown beside the curves, and which one it is (`null`: the first). */
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly clipId: string | null;
  readonly chooseClip: (id: string) => void;
  /** A moment (session s) that a repetition is to be opened at; taken once. */
  readonly wanted: { current: number | null };
  readonly client: HubClient;
  /** Asks for the session anew. */
  readonly again: () => void;
  readonly comment: (comment: NewComment) => Promise<void>;
  readonly removeComment: (id: string) => Promise<void>;
  readonly relabel: (index: number, kind: LabelKind | null) => Promise<void>;
}

/** Where a comment hangs, and how to go there. */
export function pinned(comment: Comment, desk: SessionDesk) {
  const index = pinOf(comment, desk.session.analysis?.repetitions ?? []);
  const open = (): void => {
    desk.wanted.current = comment.momentS;
    desk.setView({ ...desk.view, open: index, beside: null });
  };
  return { index, open };
}

/** The film beside the curves; `undefined` without one. */
export const shownClip = ({ session: { clips }, clipId }: SessionDesk): Clip | undefined =>
  clips.find(({ id }) => id === clipId) ?? clips[0];
