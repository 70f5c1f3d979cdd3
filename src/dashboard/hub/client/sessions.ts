import type {
  Clip,
  ClipChange,
  Comment,
  HubSession,
  LabelKind,
  NewComment,
  RelabelRequest,
  ReviewedRequest,
  TextBlock,
} from '../../../streaming/hubContract/review.ts';
import type { Imported } from '../../../streaming/sessionsContract.ts';
import { httpSource } from '../../review/source.ts';
import { API, type Asking, part } from './asking.ts';

const at = (id: string, rest = ''): string => `sessions/${part(id)}${rest}`;

/** Sessions on the hub and what is said about them. */
export const sessionsClient = ({ get, send, upload }: Asking) => ({
  session: (id: string) => get<HubSession>(at(id)),
  /** Overview and curves come as the student's own service gives them. */
  curves: httpSource(API),
  importZip: (studentId: string, file: File) =>
    upload<Imported>(`students/${part(studentId)}/import`, file, 'application/zip'),
  dropSession: (id: string) => send<null>('DELETE', at(id)),
  analyseAgain: (id: string) => send<null>('POST', at(id, '/analysis')),
  setReviewed: (id: string, reviewed: boolean) =>
    send<null>('PUT', at(id, '/reviewed'), { reviewed } satisfies ReviewedRequest),
  comment: (id: string, comment: NewComment) => send<Comment>('POST', at(id, '/comments'), comment),
  dropComment: (commentId: string) => send<null>('DELETE', `comments/${part(commentId)}`),
  relabel: (id: string, index: number, kind: LabelKind | null) =>
    send<null>('PUT', at(id, `/relabels/${index}`), { kind } satisfies RelabelRequest),
  addClip: (id: string, file: File) => upload<Clip>(at(id, `/clips?name=${part(file.name)}`), file),
  clipAddress: (clipId: string) => `${API}/clips/${part(clipId)}`,
  changeClip: (clipId: string, change: ClipChange) =>
    send<Clip>('PATCH', `clips/${part(clipId)}`, change),
  dropClip: (clipId: string) => send<null>('DELETE', `clips/${part(clipId)}`),
  exportAddress: (id: string, format: string) => `${API}/${at(id, `/export/${format}`)}`,
  blocks: () => get<readonly TextBlock[]>('blocks'),
  addBlock: (block: Omit<TextBlock, 'id'>) => send<TextBlock>('POST', 'blocks', block),
  changeBlock: ({ id, ...block }: TextBlock) => send<TextBlock>('PUT', `blocks/${part(id)}`, block),
  dropBlock: (id: string) => send<null>('DELETE', `blocks/${part(id)}`),
});
