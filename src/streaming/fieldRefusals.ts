import { LINE_PATTERN, WORDS_PATTERN } from '../sensors/plainText.ts';
import { type SentenceBook, fill } from '../sensors/sentence.ts';

/** What is wrong with a field of a request; `{field}` is its label. */
export const FIELD_REFUSALS = {
  required: '{field}: required.',
  empty: '{field}: must not be empty.',
  unknown: 'Unknown field: {field}.',
  shortest: '{field}: at least {least} characters.',
  longest: '{field}: at most {most} characters.',
  items: '{field}: at most {most} entries.',
  low: '{field}: at least {least}.',
  high: '{field}: at most {most}.',
  string: '{field}: must be text.',
  number: '{field}: must be a number.',
  integer: '{field}: must be a whole number.',
  boolean: '{field}: must be true or false.',
  list: '{field}: must be a list.',
  object: '{field}: must be an object.',
  choice: '{field}: must be one of {choices}.',
  login: '{field}: 2 to 60 letters, digits, dots, dashes or underscores.',
  line: '{field}: must not be empty, and no line break or character that cannot be seen.',
  words: '{field}: must not be empty, and no control characters.',
  format: '{field}: wrong format.',
} as const satisfies SentenceBook;
export type FieldRefusalKey = keyof typeof FIELD_REFUSALS;

/** Fields of all requests, in plain words. */
export const FIELD_LABELS = {
  active: 'Active',
  address: 'Address',
  agreed: 'Consent',
  atMs: 'Day',
  basedOn: 'Plan version',
  beforeMs: 'Before',
  body: 'The request',
  bytes: 'Size',
  clientId: 'Session',
  clubName: 'Club or coaching name',
  coachId: 'Coach',
  code: 'Code',
  current: 'Current password',
  format: 'Format',
  hand: 'Hand',
  hubUrl: 'Hub address',
  id: 'Id',
  index: 'Repetition',
  kind: 'Kind',
  login: 'Sign-in name',
  machine: 'Computer name',
  momentS: 'Moment',
  name: 'Name',
  next: 'New password',
  note: 'Note',
  older: 'Older sessions',
  onNote: 'Answer to the note',
  painAfter: 'Pain after',
  painBefore: 'Pain before',
  password: 'Password',
  plain: 'Without encryption',
  plan: 'Plan',
  planId: 'Plan',
  reason: 'Reason',
  replyTo: 'Reply to',
  reviewed: 'Reviewed',
  role: 'Role',
  send: 'Send sessions',
  sessionId: 'Session',
  sha256: 'Checksum',
  startS: 'Start of the film',
  studentId: 'Student',
  text: 'Text',
  title: 'Title',
  validFromMs: 'Valid from',
  view: 'Camera view',
} as const;
export type FieldLabelKey = keyof typeof FIELD_LABELS;

/** One error of a JSON schema, as ajv gives it. */
export interface SchemaError {
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
}

/** A field without a label by its own name: `upload-offset` reads "Upload offset". */
function labelOf(name: string): string {
  if (Object.hasOwn(FIELD_LABELS, name)) return FIELD_LABELS[name as FieldLabelKey];
  const words = name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return `${words.charAt(0).toUpperCase()}${words.slice(1).toLowerCase()}`.slice(0, 60);
}

/** The innermost named field on the way; an entry of a list goes by the list's name. */
const fieldOf = (path: string): string =>
  path
    .split('/')
    .filter((part) => part !== '' && !/^\d+$/.test(part))
    .at(-1) ?? 'body';

const TYPES: Readonly<Record<string, FieldRefusalKey>> = {
  string: 'string',
  number: 'number',
  integer: 'integer',
  boolean: 'boolean',
  array: 'list',
  object: 'object',
};

/** Key and values by the schema's keyword; the field is the path's where none is given. */
type Said = readonly [key: FieldRefusalKey, values?: Record<string, string>, field?: string];

const KEYWORDS: Readonly<Record<string, (p: SchemaError['params'], field: string) => Said>> = {
  required: (p) => ['required', {}, String(p['missingProperty'])],
  additionalProperties: (p) => ['unknown', {}, String(p['additionalProperty'])],
  type: (p) => [TYPES[[p['type']].flat().map(String)[0] ?? ''] ?? 'format'],
  minLength: (p) => (p['limit'] === 1 ? ['empty'] : ['shortest', { least: String(p['limit']) }]),
  maxLength: (p) => ['longest', { most: String(p['limit']) }],
  minimum: (p) => ['low', { least: String(p['limit']) }],
  maximum: (p) => ['high', { most: String(p['limit']) }],
  maxItems: (p) => ['items', { most: String(p['limit']) }],
  enum: (p) => ['choice', { choices: [p['allowedValues']].flat().join(', ') }],
  const: (p) => ['choice', { choices: String(p['allowedValue']) }],
  pattern: ({ pattern }, field) => {
    if (pattern === LINE_PATTERN) return ['line'];
    return [pattern === WORDS_PATTERN ? 'words' : field === 'login' ? 'login' : 'format'];
  },
};

/** Of several errors about one value the one to say: all choices of a union, else what its one real type lacks. */
function leading(errors: readonly SchemaError[]): SchemaError | undefined {
  const union = errors.find((e) => e.keyword === 'anyOf');
  if (union === undefined) return errors[0];
  const parts = errors.filter((e) => e.instancePath.startsWith(union.instancePath) && e !== union);
  const choices = parts.filter((e) => e.keyword === 'const').map((e) => e.params['allowedValue']);
  if (choices.length > 0) return { ...union, keyword: 'enum', params: { allowedValues: choices } };
  return parts.find((e) => e.params['type'] !== 'null') ?? union;
}

/** A sentence that names the field and says what it may be: "Password: at least 10 characters." */
export function fieldRefusal(errors: readonly SchemaError[]): string {
  const error = leading(errors);
  if (error === undefined) return fill(FIELD_REFUSALS.format, { field: FIELD_LABELS.body });
  const at = fieldOf(error.instancePath);
  const [key, values, field] = KEYWORDS[error.keyword]?.(error.params, at) ?? ['format'];
  return fill(FIELD_REFUSALS[key], { field: labelOf(field ?? at), ...values });
}
